"use strict";
// A recording's figure: speed above, pressures below, on one time. Drawn from what is here at once; finer lines are fetched when the hand rests.
class Trace {
  static wait = 60;
  static columns = 1500;

  // While the picture moves: so many, at most, that a frame is drawn before the next is due.
  static moving = 300;

  constructor(part) {
    this.part = part;
    this.session = part.dataset.session;
    this.figure = part.querySelector(".figure");
    part.addEventListener("toggle", () => { if (part.open) { this.open(); } });
  }

  open() {
    this.opened ??= this.draw().catch(error => { this.figure.textContent = error.message; });
    return this.opened;
  }

  async draw() {
    this.about = JSON.parse(this.part.dataset.about);
    this.whole = await TraceWindow.fetch(this.session, this.about.unit, this.about.from, this.about.to, Trace.columns);
    if (this.whole.tables[0][0].length === 0) {
      this.figure.textContent = "Nothing was recorded, or its times contradict each other: there is no picture.";
      return;
    }
    this.furnish();
    this.show(this.about.from, this.about.to);
    performance.mark("trace-drawn");
  }

  furnish() {
    this.figure.tabIndex = 0;
    this.figure.setAttribute("role", "group");
    this.figure.setAttribute("aria-label", "Trace: arrow keys move, with Shift they read the lines, plus and minus zoom, 0 shows all, N goes to the next hold");
    const bar = Trace.element("div", "bar");
    for (const [name, act] of [
      ["Zoom in", () => this.zoom(0.5)], ["Zoom out", () => this.zoom(2)], ["◀ Back", () => this.move(-0.4)], ["On ▶", () => this.move(0.4)],
      ["Next hold", () => this.next()], ["All", () => this.all()],
    ]) {
      const button = Trace.element("button", "", name);
      button.type = "button";
      button.addEventListener("click", act);
      bar.append(button);
    }
    this.readout = Trace.element("div", "readout", "Point at the lines to read them, or press Shift with an arrow key.");
    this.readout.setAttribute("role", "status");
    this.strips = Trace.element("div", "strips");
    this.figure.append(bar, this.readout, this.strips, Trace.element("p", "key holds", this.about.holds.map(hold => `${hold.number} ${hold.words}`).join(" · ")), Trace.element("p", "key",
      "Grey: holds that were judged, by their numbers. Hatched: limits. Shaded round a line: from lowest to highest reading; a lone peak there is interference, which the logger leaves out. ▲ ▼: a reading beyond the frame. Pressures as recorded, before the engine-off reading is taken off."));
    this.plots = [
      this.strip(`Engine speed, rpm`, 0.42, [["speed", 0]], false),
      this.strip(`Pressures, ${this.about.unitWords}`, 0.58, [["main", 1], ["clutch", 2], ["conv.", 3]], true),
    ];
    this.figure.addEventListener("keydown", event => this.key(event));
    this.strips.addEventListener("wheel", event => this.wheel(event), { passive: false });
    addEventListener("resize", () => this.plots.forEach(({ plot, share }) => plot.setSize({ width: this.width(), height: share * this.height() })));
  }

  strip(title, share, channels, hasTime) {
    const lines = channels.filter(([, channel]) => TraceWindow.has(this.whole, channel)).map(([name, channel], n) => ({
      name, quantity: TraceWindow.channels[channel], low: 3 * channel + 1, high: 3 * channel + 2, mean: 3 * channel + 3, dash: Strip.dashes[n],
    }));
    this.strips.append(Trace.element("div", "title", title));
    return { share, ...Strip.make(this.strips, this.width(), share * this.height(), title, lines, this.whole.tables[0], this.about.holds, hasTime, {
      sync: "trace-" + this.session, select: plot => this.select(plot), cursor: plot => this.read(plot),
    }) };
  }

  width() { return Math.max(320, this.figure.clientWidth - 2); }

  height() { return Math.max(340, Math.min(560, innerHeight - 190)); }

  get span() { return this.to - this.from; }

  show(from, to) {
    const { from: first, to: last } = this.about;
    const span = Math.min(Math.max(to - from, 0.05), last - first || 1);
    this.from = Math.min(Math.max(from, first), Math.max(first, last - span));
    this.to = this.from + span;
    const fits = this.detail && this.detail.from <= this.from && this.detail.to >= this.to;
    this.use(TraceWindow.table(fits ? this.detail : this.whole, this.from, this.to, Trace.moving));
    for (const { plot } of this.plots) {
      plot.setScale("x", { min: this.from, max: this.to });
    }
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.refine(), Trace.wait);
  }

  use(table) {
    if (this.used !== table) {
      this.used = table;
      this.plots.forEach(strip => strip.feed(table));
    }
  }

  async refine() {
    this.pending?.abort();
    this.pending = new AbortController();
    const { from, to, span } = this;
    try {
      const detail = await TraceWindow.fetch(this.session, this.about.unit, from - span / 2, to + span / 2, 2 * Trace.columns, this.pending.signal);
      if (this.from === from && this.to === to) {
        this.detail = detail;
        this.use(detail.tables[0]);
        this.plots.forEach(({ plot }) => plot.setScale("x", { min: from, max: to }));
        this.figure.dataset.shown = `${from} ${to}`;
      }
    } catch (error) {
      if (error.name !== "AbortError") {
        this.readout.textContent = error.message;
      }
    }
  }

  zoom(factor, at = (this.from + this.to) / 2) {
    this.show(at - (at - this.from) * factor, at + (this.to - at) * factor);
  }

  move(share) { this.show(this.from + share * this.span, this.to + share * this.span); }

  all() { this.show(this.about.from, this.about.to); }

  next() {
    const holds = this.about.holds;
    const at = this.hold ? holds.indexOf(this.hold) + 1 : 0;
    this.visit(holds[at % holds.length]);
  }

  visit(hold) {
    if (hold) {
      this.hold = hold;
      const room = Math.max(2, hold.to - hold.from);
      this.show(hold.from - room, hold.to + room);
      this.readout.textContent = `${hold.number} ${hold.words}`;
    }
  }

  select(plot) {
    const { left, width } = plot.select;
    if (width > 4) {
      const [from, to] = [plot.posToVal(left, "x"), plot.posToVal(left + width, "x")];
      plot.setSelect({ left: 0, width: 0, top: 0, height: 0 }, false);
      this.show(from, to);
    }
  }

  wheel(event) {
    event.preventDefault();
    const { plot } = this.plots[0];
    const at = plot.posToVal(event.clientX - plot.over.getBoundingClientRect().left, "x");
    this.zoom(event.deltaY > 0 ? 1.25 : 0.8, at);
  }

  // The cursor by keys: a hundredth of the picture each time, from where it stands.
  point(way) {
    const width = this.plots[0].plot.over.clientWidth;
    const left = this.plots[0].plot.cursor.left;
    const at = Math.min(Math.max((left >= 0 ? left : width / 2) + way * width / 100, 0), width - 1);
    this.plots.forEach(({ plot }) => plot.setCursor({ left: at, top: 1 }));
  }

  key(event) {
    const act = event.shiftKey && event.key.startsWith("Arrow") ? { ArrowLeft: () => this.point(-1), ArrowRight: () => this.point(1) }[event.key] : { "+": () => this.zoom(0.5), "=": () => this.zoom(0.5), "-": () => this.zoom(2), ArrowLeft: () => this.move(-0.2), ArrowRight: () => this.move(0.2),
      0: () => this.all(), Home: () => this.all(), n: () => this.next(), N: () => this.next() }[event.key];
    if (act && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      act();
    }
  }

  read(plot) {
    const { idx } = plot.cursor;
    if (idx === null || idx === undefined) {
      return;
    }
    const table = this.used;
    const words = [`${table[0][idx].toFixed(2)} s`];
    ["speed", "main", "clutch", "converter"].forEach((name, channel) => {
      const [low, high] = [table[3 * channel + 1][idx], table[3 * channel + 2][idx]];
      if (low !== null && low !== undefined) {
        const places = channel > 0 && ["bar", "kgfcm2"].includes(this.about.unit) ? 2 : channel > 0 && this.about.unit === "psi" ? 1 : 0;
        const [a, b] = [low.toFixed(places), high.toFixed(places)];
        words.push(`${name} ${a === b ? a : `${a} to ${b}`} ${channel === 0 ? "rpm" : this.about.unitWords}`);
      }
    });
    this.readout.textContent = words.join(" \u00a0 ");
  }

  static element(name, look, text = "") {
    const element = document.createElement(name);
    element.className = look;
    element.textContent = text;
    return element;
  }
}

{
  const traces = [...document.querySelectorAll("details.trace")].map(part => new Trace(part));
  const unfold = async trace => {
    trace.part.open = true;
    await trace.open();
    return trace;
  };
  if (location.hash.startsWith("#trace-")) {
    traces.filter(trace => "#" + trace.part.id === location.hash).forEach(unfold);
  }
  for (const button of document.querySelectorAll("[data-step]")) {
    button.addEventListener("click", async () => {
      for (const trace of traces) {
        await unfold(trace);
        const hold = trace.about?.holds.find(hold => hold.step === button.dataset.step);
        if (hold) {
          trace.visit(hold);
          trace.figure.focus({ preventScroll: true });
          trace.part.scrollIntoView();
          break;
        }
      }
    });
  }
}
