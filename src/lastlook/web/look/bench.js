// What every screen does beside what the server draws: changes without leaving the page, undo by keyboard.

import { swapForms } from "./swap.js";

swapForms();

document.addEventListener("keydown", (event) => {
  const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
  if (typing || !(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  const back = key === "z" && !event.shiftKey;
  const forth = key === "y" || (key === "z" && event.shiftKey);
  const button = back ? document.getElementById("undo") : forth ? document.getElementById("redo") : null;
  if (button instanceof HTMLButtonElement && !button.disabled) {
    event.preventDefault();
    button.click();
  }
});

const hands = () => document.getElementById("bench") && import("./table.js").then((table) => table.layHands());
const names = () => document.querySelector("[data-naming]") && import("./naming.js").then((naming) => naming.nameEdges());
hands();
names();
document.addEventListener("swapped", names);
document.addEventListener("swapped", hands);

const over = () => document.querySelector("[data-over]") && import("./over.js").then((laid) => laid.layOver());
over();
document.addEventListener("swapped", over);
