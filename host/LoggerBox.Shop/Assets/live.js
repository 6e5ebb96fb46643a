"use strict";
// Puts what the server sends into its places; it says everything as words and figures already.
{
  const place = id => document.getElementById(id);
  const write = (id, text) => {
    if (place(id).textContent !== text) {
      place(id).textContent = text;
    }
  };
  // A step can get another name later: as many as before need not be the same.
  const list = (id, lines) => {
    if ([...place(id).children].map(item => item.textContent).join("\n") !== lines.join("\n")) {
      place(id).replaceChildren(...lines.map(line => Object.assign(document.createElement("li"), { textContent: line })));
    }
  };
  // The limits as a frame, the reading as a thick mark; what it comes to stands beside it in words.
  const limit = (at, figure) => {
    at.hidden = figure.band === "";
    at.querySelector(".range").textContent = figure.band;
    at.querySelector(".standing").textContent = figure.standing;
    at.dataset.standing = figure.standing;
    at.querySelector("svg").style.visibility = figure.places ? "visible" : "hidden";
    if (figure.places) {
      const [left, right, tick] = figure.places;
      at.querySelector("rect").setAttribute("x", left);
      at.querySelector("rect").setAttribute("width", right - left);
      at.querySelector(".tick").setAttribute("x1", tick);
      at.querySelector(".tick").setAttribute("x2", tick);
    }
  };
  const show = shown => {
    document.body.dataset.state = shown.state;
    write("sentence", shown.sentence);
    write("cue", shown.cue);
    write("clock", shown.clock);
    for (const id of ["speed", "main", "clutch", "converter"]) {
      write(id, shown[id].text);
      limit(place(`${id}-limits`), shown[id]);
    }
    write("gear", shown.gear || "–");
    write("doing", shown.doing || "–");
    list("captured", shown.captured.map(step => "✓ " + step));
  };
  const source = new EventSource("/live/events?sheet=" + encodeURIComponent(document.querySelector(".dashboard").dataset.sheet));
  source.addEventListener("message", event => show(JSON.parse(event.data)));
  source.addEventListener("error", () => {
    document.body.dataset.state = "trouble";
    write("sentence", "The shop page does not answer: is `loggerbox serve` still running?");
  });
}
