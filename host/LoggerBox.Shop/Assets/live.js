"use strict";
// Puts what the server sends into its places; it says everything as words and figures already.
{
  const place = id => document.getElementById(id);
  const write = (id, text) => {
    if (place(id).textContent !== text) {
      place(id).textContent = text;
    }
  };
  const show = shown => {
    document.body.dataset.state = shown.state;
    write("sentence", shown.sentence);
    for (const id of ["speed", "main", "clutch", "converter", "cue", "clock"]) {
      write(id, shown[id]);
    }
    write("gear", shown.gear || "–");
    write("doing", shown.doing || "–");
    if (place("captured").childElementCount !== shown.captured.length) {
      place("captured").replaceChildren(...shown.captured.map(step => Object.assign(document.createElement("li"), { textContent: "✓ " + step })));
    }
  };
  const source = new EventSource("/live/events");
  source.addEventListener("message", event => show(JSON.parse(event.data)));
  source.addEventListener("error", () => {
    document.body.dataset.state = "trouble";
    write("sentence", "The shop page does not answer: is `loggerbox serve` still running?");
  });
}
