"use strict";
// Folded parts are printed open: the paper cannot be unfolded.
{
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll("details:not([open]):not(.trace)")];
    opened.forEach(part => { part.open = true; });
  });
  addEventListener("afterprint", () => opened.forEach(part => { part.open = false; }));
  for (const button of document.querySelectorAll("[data-print]")) {
    button.addEventListener("click", () => print());
  }
}
