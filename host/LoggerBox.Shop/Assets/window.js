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
    return { from, to, table };
  },

  has(window, channel) {
    return window.table[3 * channel + 1].some(value => value != null);
  },
};
