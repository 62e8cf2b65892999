// A form marked `data-swap` is sent without leaving the page: what comes back takes the place of head and main.
// Without this module the same forms work as forms do.

const SILENT = "Last Look does not answer. What was kept before is kept; start it again and reload this page.";

/** Whether an answer is awaited, and the steps (take back, bring back) that were pressed meanwhile. */
let busy = false;
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

/** Send a form; while an answer is awaited only steps are kept in mind. @param {HTMLFormElement} form @param {HTMLElement | null} submitter */
async function send(form, submitter) {
  const action = form.getAttribute("action") ?? "";
  if (busy) {
    if (/\/(undo|redo)$/.test(action)) waiting.push(action);
    return;
  }
  busy = true;
  form.setAttribute("aria-busy", "true");
  try {
    const answer = await fetch(action, { method: "POST", body: new FormData(form, submitter) });
    await show(answer);
  } catch {
    tell(SILENT);
    waiting.length = 0;
  } finally {
    busy = false;
    form.removeAttribute("aria-busy");
  }
  next();
}

/** Do the next step that was pressed while an answer was awaited. */
function next() {
  const action = waiting.shift();
  const form = action && document.querySelector(`form[action="${action}"]`);
  const button = form && form.querySelector("button");
  if (form instanceof HTMLFormElement && button && !button.disabled) form.requestSubmit();
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
