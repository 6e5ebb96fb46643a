"use strict";
// Before and after of one step over each other, both from the moment that the hold began.
{
  const figure = document.getElementById("overlay");
  const before = 8;
  const after = 4;
  const columns = 700;
  const strips = [["Engine speed, rpm", 0], ["Main pressure", 1], ["Clutch pressure", 2], ["Converter pressure", 3]];
  let about;

  // Two and two side by side, so that all four are on one screen.
  const columnsOf = place => place.clientWidth >= 800 ? 2 : 1;

  const element = (name, look, text = "") => Object.assign(document.createElement(name), { className: look, textContent: text });

  // Each side's times are counted from its own beginning: the hold's, or the gear's change.
  const side = async (session, zero, from, to) => {
    const window = await TraceWindow.fetch(session, about.unit, from, to, columns);
    window.tables[0][0] = window.tables[0][0].map(second => second - zero);
    return window;
  };

  const sides = channel => [
    { name: "before", low: 3 * channel + 1, high: 3 * channel + 2, mean: 3 * channel + 3, dash: Strip.dashes[1], ink: Strip.soft, fill: "rgba(74,84,93,.18)" },
    { name: "after", low: 3 * channel + 13, high: 3 * channel + 14, mean: 3 * channel + 15, dash: Strip.dashes[0], ink: Strip.accent, fill: "rgba(11,83,148,.18)" },
  ].map(line => ({ ...line, quantity: TraceWindow.channels[channel] }));

  const draw = async step => {
    const [one, other] = await Promise.all([step.before, step.after].map(hold => side(hold.session, hold.from, hold.from - before, hold.to + after)));
    const table = uPlot.join([one.tables[0], other.tables[0]]);
    const place = figure.querySelector(".strips");
    place.replaceChildren();
    figure.querySelector(".readout").textContent = step.words;
    for (const button of figure.querySelectorAll("[data-way]")) {
      button.setAttribute("aria-pressed", String(button.dataset.way === step.step));
    }
    const drawn = strips.filter(([, channel]) => TraceWindow.has(one, channel) || TraceWindow.has(other, channel));
    const hold = { step: "hold", from: 0, to: Math.max(step.before.to - step.before.from, step.after.to - step.after.from), limits: step.after.limits };
    drawn.forEach(([title, channel], n) => {
      const words = channel === 0 ? title : `${title}, ${about.unitWords}`;
      const cell = element("div", "", "");
      cell.append(element("div", "title", words));
      place.append(cell);
      const hasTime = n >= drawn.length - columnsOf(figure);
      const width = Math.max(320, figure.clientWidth / columnsOf(figure) - 4);
      Strip.make(cell, width, hasTime ? 174 : 146, words, sides(channel), table, [hold], hasTime, { sync: "compare", select: () => {}, cursor: () => {} });
    });
    figure.dataset.shown = step.step;
  };

  // Clutch pressure from the gear's change, forward and reverse beside each other.
  const fillings = document.getElementById("engagements");
  const clutch = 2;
  const drawFilling = async (place, engagement) => {
    const longest = Math.max(engagement.before.total ?? 0, engagement.after.total ?? 0);
    const [one, other] = await Promise.all([engagement.before, engagement.after].map(one => side(one.session, one.from, one.from - 0.5, one.from + longest + 1.5)));
    const hold = { step: "filling", from: 0, to: longest, limits: [] };
    const cell = element("div", "", "");
    cell.append(element("div", "title", engagement.words));
    place.append(cell);
    const width = Math.max(320, fillings.clientWidth / columnsOf(fillings) - 4);
    Strip.make(cell, width, 230, `Clutch pressure, ${about.unitWords}. ${engagement.words}`, sides(clutch), uPlot.join([one.tables[0], other.tables[0]]), [hold], true, { sync: `filling-${engagement.gear}`, select: () => {}, cursor: () => {} });
  };

  const startFillings = async () => {
    if (!fillings) {
      return;
    }
    const place = element("div", "strips");
    fillings.append(place, element("p", "key", `Clutch pressure, ${about.unitWords}, as recorded. Dashed: before. Solid: after. Both from the gear's change; shaded until the slower one stands at 90 %.`));
    for (const engagement of about.engagements) {
      await drawFilling(place, engagement);
    }
    fillings.dataset.shown = String(about.engagements.length);
  };

  const start = async () => {
    about = JSON.parse(figure.dataset.about);
    startFillings().catch(error => fillings.append(element("p", "remark", error.message)));
    if (about.steps.length === 0) {
      throw new Error("No step was held both times: there is nothing to lay over each other.");
    }
    const bar = element("div", "bar");
    for (const step of about.steps) {
      const button = element("button", "", step.words);
      button.type = "button";
      button.dataset.way = step.step;
      button.addEventListener("click", () => draw(step).catch(say));
      bar.append(button);
    }
    figure.append(bar, element("div", "readout"), element("div", "strips"), element("p", "key",
      "Dashed: before. Solid: after. Both from the moment that the hold began, pressures as recorded. Hatched: limits."));
    const change = document.querySelector("table.readings .verdict.outside")?.closest("tbody").querySelector("[data-step]")?.dataset.step;
    await draw(about.steps.find(step => step.step === change) ?? about.steps[0]);
  };

  const say = error => { figure.append(element("p", "remark", error.message)); };

  for (const button of document.querySelectorAll("[data-step]")) {
    button.addEventListener("click", () => {
      const step = about?.steps.find(step => step.step === button.dataset.step);
      if (step) {
        draw(step).catch(say);
        figure.scrollIntoView();
      }
    });
  }
  start().catch(say);
}
