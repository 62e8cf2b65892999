// The cutting table under the hands: mouse, touch and keys move a piece; the judge is asked while it moves.
// Numbers are those of the cloth in millimetres; the drawing is `times` as large, its y downwards.

import { show, tell } from "./swap.js";

const STEP_MM = 5;
const FINE_MM = 1;
const ASK_MS = 90;
const WATCH_MS = 400;
/** @type {Record<string, number[]>} */
const NUDGES = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** What the hands had in mind before the page was drawn anew: the piece chosen, the pieces held fast. */
const mind = { chosen: "", fast: new Set() };

/** Bring the table on this page under the hands, if there is one. */
export function layHands() {
  const bench = document.getElementById("bench");
  if (!(bench instanceof HTMLElement) || bench.dataset.ready) return;
  bench.dataset.ready = "yes";
  new Table(bench);
}

class Table {
  /** @param {HTMLElement} bench */
  constructor(bench) {
    this.bench = bench;
    this.at = bench.dataset.at ?? "";
    const hands = JSON.parse(bench.dataset.hands ?? "{}");
    this.times = hands.times;
    this.left = hands.left;
    this.placements = hands.placements ?? [];
    this.drawing = bench.querySelector("svg");
    this.groups = [...bench.querySelectorAll('g[data-name^="cut "]')];
    this.twins = this.paired(hands.twins ?? []);
    this.locked = new Set();
    this.chosen = -1;
    this.asking = null;
    this.wait = 0;
    this.shifts = this.placements.map(() => ({ x: 0, y: 0, turn: 0 }));
    this.names = this.placements.map((place) => `${this.at} ${place.id} ${place.copy} ${place.part}`);
    this.cut = new Set(hands.cut ?? []);
    this.recall();
    this.groups.forEach((group, spot) => group.addEventListener("pointerdown", (event) => this.grasp(event, spot)));
    bench.addEventListener("click", (event) => this.click(event));
    bench.addEventListener("change", (event) => this.hold(event));
    bench.addEventListener("keydown", (event) => this.key(event));
    if (!(/** @type {HTMLElement} */ (document.getElementById("stop"))?.hidden ?? true)) this.watch();
  }

  /** Take a piece by the pointer, until it is let go. @param {PointerEvent} event @param {number} spot */
  grasp(event, spot) {
    if (event.button !== 0 || this.locked.has(spot)) return;
    event.preventDefault();
    this.choose(spot);
    const group = this.groups[spot];
    const from = this.point(event);
    const before = { ...this.shifts[spot] };
    group.setPointerCapture(event.pointerId);
    group.classList.add("held");
    const move = (/** @type {PointerEvent} */ next) => {
      const to = this.point(next);
      this.shift(spot, { ...before, x: before.x + to.x - from.x, y: before.y + to.y - from.y });
    };
    const end = () => {
      group.removeEventListener("pointermove", move);
      group.classList.remove("held");
      const now = this.shifts[spot];
      if (Math.hypot(now.x - before.x, now.y - before.y) > 0.3) this.put(spot);
    };
    group.addEventListener("pointermove", move);
    group.addEventListener("pointerup", end, { once: true });
    group.addEventListener("pointercancel", end, { once: true });
  }

  /** Where a pointer is on the drawing. @param {PointerEvent} event */
  point(event) {
    const spot = new DOMPoint(event.clientX, event.clientY);
    return spot.matrixTransform(this.drawing.getScreenCTM().inverse());
  }

  /** Draw a piece where it is held, and ask the judge. @param {number} spot @param {{x: number, y: number, turn: number}} to */
  shift(spot, to) {
    this.shifts[spot] = to;
    const middle = this.middle(spot);
    const turned = to.turn ? ` rotate(${-to.turn} ${middle.x} ${middle.y})` : "";
    this.groups[spot].setAttribute("transform", `translate(${to.x} ${to.y})${turned}`);
    const twin = this.twins[spot];
    twin?.path?.setAttribute("transform", `translate(${to.x} ${twin.way * to.y})${turned}`);
    window.clearTimeout(this.wait);
    this.wait = window.setTimeout(() => this.ask(spot), ASK_MS);
  }

  /** The broken outlines that other layers give, each to its cut, in the order in which both are drawn. @param {string[]} ways */
  paired(ways) {
    const paths = [...this.bench.querySelectorAll('svg > path[stroke-dasharray="1.5 0.9"]')];
    return ways.map((way) => (way ? { path: paths.shift(), way: way === "along" ? 1 : -1 } : null));
  }

  /** The middle of a piece as it was drawn. @param {number} spot */
  middle(spot) {
    const box = this.groups[spot].querySelector("path").getBBox();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }

  /** Where the pieces lie now, on the cloth. */
  laid() {
    return this.placements.map((place, spot) => this.moved(place, spot));
  }

  /** @param {any} place @param {number} spot */
  moved(place, spot) {
    const { x, y, turn } = this.shifts[spot];
    const dx = (this.left ? -x : x) / this.times;
    const dy = (this.left ? y : -y) / this.times;
    if (!turn) return { ...place, x: place.x + dx, y: place.y + dy };
    const middle = this.onCloth(this.middle(spot));
    const angle = (turn * Math.PI) / 180;
    const [px, py] = [place.x - middle.x, place.y - middle.y];
    return {
      ...place,
      x: middle.x + px * Math.cos(angle) - py * Math.sin(angle) + dx,
      y: middle.y + px * Math.sin(angle) + py * Math.cos(angle) + dy,
      angle_deg: (((place.angle_deg + turn) % 360) + 360) % 360,
    };
  }

  /** A point of the drawing on the cloth, by the cloth's own corner in the drawing. @param {{x: number, y: number}} point */
  onCloth(point) {
    const cloth = this.drawing.querySelector("path").getBBox();
    return this.left
      ? { x: (cloth.x + cloth.width - point.x) / this.times, y: (point.y - cloth.y) / this.times }
      : { x: (point.x - cloth.x) / this.times, y: (cloth.y + cloth.height - point.y) / this.times };
  }

  /** Ask the judge whether a piece may lie where it is. @param {number} spot */
  async ask(spot) {
    this.asking?.abort();
    this.asking = new AbortController();
    try {
      const answer = await fetch(`${this.at}/judge`, this.sent({ placements: this.laid(), spot }, this.asking.signal));
      const told = await answer.json();
      this.groups[spot].classList.toggle("wrong", !told.good);
      this.say(told.good ? "It may lie here." : told.say[0] ?? "It may not lie here.");
    } catch (trouble) {
      if (!(trouble instanceof DOMException)) tell("Last Look does not answer.");
    }
  }

  /** Keep the pieces as they lie. @param {number} spot */
  async put(spot) {
    window.clearTimeout(this.wait);
    const name = this.placements[spot].id;
    const answer = await fetch(`${this.at}/put`, this.sent({ placements: this.laid(), moved: name }));
    await show(answer);
  }

  /** @param {MouseEvent} event */
  click(event) {
    const button = event.target instanceof HTMLElement ? event.target.closest("button") : null;
    if (!button) return;
    if (button.id === "search") this.search();
    if (button.id === "stop") this.stop();
    const spot = Number(button.closest("li")?.dataset.spot ?? -1);
    if (button.classList.contains("take")) this.choose(spot);
    if (button.dataset.nudge) this.step(NUDGES[button.dataset.nudge] ?? [0, 0], STEP_MM);
    if (button.classList.contains("turn") && !this.locked.has(spot)) {
      const now = this.shifts[spot];
      this.shift(spot, { ...now, turn: now.turn + Number(button.dataset.turn) });
      this.put(spot);
    }
  }

  /** @param {Event} event */
  hold(event) {
    if (!(event.target instanceof HTMLInputElement) || !event.target.classList.contains("lock")) return;
    const spot = Number(event.target.closest("li")?.dataset.spot);
    this.fasten(spot, event.target.checked);
  }

  /** @param {number} spot @param {boolean} fast */
  fasten(spot, fast) {
    for (const [set, name] of [[this.locked, spot], [mind.fast, this.names[spot]]]) {
      if (fast) set.add(name);
      else set.delete(name);
    }
    this.groups[spot].classList.toggle("fast", fast);
  }

  /** What is cut stays where it is for good; take up again what was chosen and held fast before the page was drawn anew. */
  recall() {
    this.names.forEach((name, spot) => {
      if (mind.fast.has(name)) this.fasten(spot, true);
      const box = document.getElementById(`lock-${spot}`);
      if (box instanceof HTMLInputElement) box.checked = mind.fast.has(name);
      if (mind.chosen === name) this.choose(spot);
      if (this.cut.has(spot)) this.locked.add(spot);
      this.groups[spot].classList.toggle("is-cut", this.cut.has(spot));
    });
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const way = NUDGES[event.key];
    const spot = this.chosen;
    if (spot < 0 || this.locked.has(spot)) return;
    if (event.key === "Enter" && event.target instanceof HTMLElement && event.target.id === `take-${spot}` && this.isMoved(spot)) {
      event.preventDefault();
      this.put(spot);
    }
    if (!way) return;
    event.preventDefault();
    this.step(way, event.shiftKey ? FINE_MM : STEP_MM);
  }

  /** Move the chosen piece a step, and keep it once the hands rest. @param {number[]} way @param {number} mm */
  step(way, mm) {
    const spot = this.chosen;
    if (spot < 0) this.say("Choose a piece first.");
    if (spot < 0 || this.locked.has(spot)) return;
    const now = this.shifts[spot];
    const by = mm * this.times;
    this.shift(spot, { ...now, x: now.x + way[0] * by, y: now.y + way[1] * by });
    window.clearTimeout(this.rest);
    this.rest = window.setTimeout(() => this.put(spot), 900);
  }

  /** @param {number} spot */
  isMoved(spot) {
    const { x, y, turn } = this.shifts[spot];
    return Boolean(x || y || turn);
  }

  /** @param {number} spot */
  choose(spot) {
    this.chosen = spot;
    mind.chosen = this.names[spot];
    this.groups.forEach((group, one) => group.classList.toggle("chosen", one === spot));
    for (const take of this.bench.querySelectorAll(".take")) {
      take.setAttribute("aria-pressed", String(take.id === `take-${spot}`));
    }
  }

  /** Let the rest be laid again, and watch. */
  async search() {
    const held = [...this.locked];
    await fetch(`${this.at}/search`, this.sent({ placements: this.laid(), locked: held }));
    this.watch();
  }

  async stop() {
    await fetch(`${this.at}/stop`, this.sent({}));
  }

  /** Say how far the search is, until it ends; then show what it found. */
  async watch() {
    const [search, stop] = ["search", "stop"].map((id) => document.getElementById(id));
    if (search instanceof HTMLButtonElement) search.disabled = true;
    if (stop) stop.hidden = false;
    for (;;) {
      const told = await (await fetch(`${this.at}/search`)).json();
      if (!this.bench.isConnected) return;
      this.say(told.say);
      if (!told.going) break;
      await new Promise((done) => window.setTimeout(done, WATCH_MS));
    }
    await show(await fetch(this.at));
  }

  /** @param {string} words */
  say(words) {
    const line = document.getElementById("verdict");
    if (line) line.textContent = words;
  }

  /** @param {object} what @param {AbortSignal} [signal] */
  sent(what, signal) {
    return { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(what), signal };
  }
}
