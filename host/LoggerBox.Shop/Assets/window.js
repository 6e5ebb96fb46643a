"use strict";
// Stretches of a recording as the server sends them: times, then per channel the lows, the highs and the means. NaN is a missing reading.
const TraceWindow = {
  channels: ["rpm", "main", "clutch", "converter"],

  // Longer than this without a reading is a hole in the line, seconds.
  shortestHole: 0.5,

  async fetch(session, unit, from, to, columns, signal) {
    const address = `/trace/${session}?from=${from}&to=${to}&columns=${columns}&unit=${unit}`;
    const answer = await fetch(address, { signal });
    if (!answer.ok) {
      throw new Error("The picture could not be fetched: reload the page.");
    }
    return TraceWindow.read(await answer.arrayBuffer(), (to - from) / columns, from, to);
  },

  // Columns of uPlot: x, then low, high and mean of each channel.
  read(bytes, width, from, to) {
    const count = new DataView(bytes).getInt32(0, true);
    const seconds = new Float64Array(bytes, 8, count);
    const values = new Float32Array(bytes, 8 + 8 * count);
    const hole = Math.max(TraceWindow.shortestHole, 4 * width);
    const table = [[]];
    for (let line = 0; line < 12; line++) {
      table.push([]);
    }
    const isEmpty = i => [0, 3, 6, 9].every(line => Number.isNaN(values[line * count + i]));
    let last = Infinity;
    for (let i = 0; i < count; i++) {
      if (isEmpty(i)) {
        continue;
      }
      if (seconds[i] - last > hole) {
        table[0].push((seconds[i] + last) / 2);
        for (let line = 1; line <= 12; line++) {
          table[line].push(null);
        }
      }
      table[0].push(last = seconds[i]);
      for (let channel = 0; channel < 4; channel++) {
        for (let line = 3 * channel; line < 3 * channel + 3; line++) {
          const value = values[line * count + i];
          table[line + 1].push(Number.isNaN(value) ? null : value);
        }
      }
    }
    return { from, to, tables: [table] };
  },

  // The same with half as many columns, over and over, until a stretch holds few enough to be drawn with each turn of a wheel.
  table(window, from, to, most) {
    let level = 0;
    while (TraceWindow.count(window.tables[level], from, to) > most) {
      window.tables[++level] ??= TraceWindow.halve(window.tables[level - 1]);
    }
    return window.tables[level];
  },

  count(table, from, to) {
    const [first, last] = [from, to].map(second => TraceWindow.firstAt(table[0], second));
    return last - first;
  },

  firstAt(seconds, second) {
    let [low, high] = [0, seconds.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      [low, high] = seconds[middle] < second ? [middle + 1, high] : [low, middle];
    }
    return low;
  },

  // Two neighbours become one, with the lowest and the highest of both: no extreme is lost. A hole stays a hole, and parts what lies beside it.
  halve(table) {
    const halved = table.map(() => []);
    const isHole = i => [1, 4, 7, 10].every(line => table[line][i] === null);
    const of = (a, b, both) => a === null ? b : b === null ? a : both(a, b);
    for (let i = 0; i < table[0].length; i++) {
      const j = i + 1 < table[0].length && !isHole(i) && !isHole(i + 1) ? i + 1 : i;
      halved[0].push((table[0][i] + table[0][j]) / 2);
      for (let line = 1; line < table.length; line += 3) {
        halved[line].push(of(table[line][i], table[line][j], Math.min));
        halved[line + 1].push(of(table[line + 1][i], table[line + 1][j], Math.max));
        halved[line + 2].push(of(table[line + 2][i], table[line + 2][j], (a, b) => (a + b) / 2));
      }
      i = j;
    }
    return halved;
  },

  has(window, channel) {
    return window.tables[0][3 * channel + 1].some(value => value != null);
  },
};
