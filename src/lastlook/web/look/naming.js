// The edges of a foreign piece named on its drawing: a name is pressed, then the edges that have it.
// Every edge is a button for keyboard and touch too; the list beside the drawing says the same and works alone.

/** Bring every drawing on this page whose edges can be named under the hands. */
export function nameEdges() {
  for (const place of document.querySelectorAll("[data-naming]")) {
    if (!(place instanceof HTMLElement) || place.dataset.ready) continue;
    place.dataset.ready = "yes";
    ready(place);
  }
}

/** @param {HTMLElement} place */
function ready(place) {
  const palette = place.querySelector(".palette");
  palette?.removeAttribute("hidden");
  for (const group of place.querySelectorAll('g[data-name^="run "]')) {
    const number = group.getAttribute("data-name")?.slice(4) ?? "";
    const list = place.querySelector(`select[data-run="${number}"]`);
    if (!(list instanceof HTMLSelectElement)) continue;
    group.setAttribute("tabindex", "0");
    group.setAttribute("role", "button");
    told(group, number, list);
    const name = () => {
      const pressed = place.querySelector(".palette input:checked");
      list.value = pressed instanceof HTMLInputElement ? pressed.value : "";
      told(group, number, list);
    };
    group.addEventListener("click", name);
    group.addEventListener("keydown", (event) => {
      if (!(event instanceof KeyboardEvent) || (event.key !== "Enter" && event.key !== " ")) return;
      event.preventDefault();
      name();
    });
    list.addEventListener("change", () => told(group, number, list));
    list.addEventListener("focus", () => group.classList.add("chosen"));
    list.addEventListener("blur", () => group.classList.remove("chosen"));
  }
}

/** Write an edge's name on it. @param {Element} group @param {string} number @param {HTMLSelectElement} list */
function told(group, number, list) {
  const said = list.selectedOptions[0]?.textContent?.replace("as it lies: ", "") ?? "";
  const words = group.querySelector("text");
  if (words && list.value) words.textContent = `${number} ${list.value}`;
  group.setAttribute("aria-label", `Edge ${number}: ${said}`);
}
