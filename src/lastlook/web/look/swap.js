// A form marked `data-swap` is sent without leaving the page: what comes back takes the place of head and main.
// Without this module the same forms work as forms do.

const SILENT = "Last Look does not answer. What was kept before is kept; start it again and reload this page.";

/** The form whose answer is awaited, and what was sent meanwhile, in order. */
let busy = null;
let running = false;
const waiting = [];

/** Listen for such forms, wherever they are put later. */
export function swapForms() {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !form.hasAttribute("data-swap")) return;
    event.preventDefault();
    send(form, event.submitter);
  });
}

/** Send a form, after what was sent before it; a form pressed twice is sent once, but steps as often as pressed. */
async function send(form, submitter) {
  const action = form.getAttribute("action") ?? "";
  const isStep = /\/(undo|redo)$/.test(action);
  if (busy === form && !isStep) return;
  waiting.push({ form, action, data: new FormData(form, submitter) });
  if (running) return;
  running = true;
  for (let one = waiting.shift(); one; one = waiting.shift()) await answered(one);
  running = false;
}

/** Await one answer and show it. @param {{form: HTMLFormElement, action: string, data: FormData}} one */
async function answered({ form, action, data }) {
  busy = form;
  form.setAttribute("aria-busy", "true");
  try {
    await show(await fetch(action, { method: "POST", body: data }));
  } catch {
    tell(SILENT);
    waiting.length = 0;
  } finally {
    busy = null;
    form.removeAttribute("aria-busy");
  }
}

/** Put an answered page in place of the one shown, and the hands back where they were. @param {Response} answer */
export async function show(answer) {
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const held = place();
  const open = new Set([...document.querySelectorAll("details[open] > summary")].map((one) => one.textContent));
  for (const id of ["head", "main"]) {
    const fresh = page.getElementById(id);
    const old = document.getElementById(id);
    if (fresh && old) old.replaceWith(document.adoptNode(fresh));
  }
  document.title = page.title;
  for (const summary of document.querySelectorAll("details > summary")) {
    if (open.has(summary.textContent)) summary.parentElement?.setAttribute("open", "");
  }
  const spot = (held && document.getElementById(held)) || document.getElementById("main");
  spot?.focus({ preventScroll: true });
  document.dispatchEvent(new CustomEvent("swapped"));
}

/** Where the hands are: the field or button by its id. */
function place() {
  const held = document.activeElement;
  return held instanceof HTMLElement ? held.id || null : null;
}

/** Say something that no page says. @param {string} words */
export function tell(words) {
  let slip = document.querySelector(".silent");
  if (!slip) {
    slip = document.createElement("p");
    slip.className = "silent";
    slip.setAttribute("role", "alert");
    document.body.append(slip);
  }
  slip.textContent = words;
}
