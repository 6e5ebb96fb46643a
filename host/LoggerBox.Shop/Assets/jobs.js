"use strict";
// What the newest jobs come to: one that nobody has read yet takes the program a moment.
{
  const ask = async () => {
    for (const place of document.querySelectorAll("[data-outcome]")) {
      place.textContent = "being read";
      const answer = await fetch(`/outcome/${place.dataset.outcome}`);
      place.textContent = answer.ok ? await answer.text() : "open it to see";
    }
    document.documentElement.dataset.read = "all";
  };
  ask().catch(() => {});
}
