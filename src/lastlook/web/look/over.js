// Two photographs over each other: the slider says how much of the upper one is seen.

/** Lay the photographs on this page over each other. */
export function layOver() {
  for (const place of document.querySelectorAll("[data-over]")) {
    const two = place.querySelector(".two");
    const upper = place.querySelector(".above");
    const fade = place.querySelector("#fade");
    if (!(upper instanceof HTMLElement) || !(fade instanceof HTMLInputElement) || two?.classList.contains("laid")) continue;
    two?.classList.add("laid");
    place.querySelector(".fader")?.removeAttribute("hidden");
    const seen = () => upper.style.setProperty("opacity", String(fade.valueAsNumber / 100));
    fade.addEventListener("input", seen);
    seen();
  }
}
