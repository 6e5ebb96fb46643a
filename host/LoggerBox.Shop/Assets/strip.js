"use strict";
// One strip of paper: some lines over time, the holds behind them, limits as hatched bands. Lines differ by their dashes and by the name at their end.
const Strip = {
  ink: "#14181c",
  soft: "#4a545d",
  rule: "#d3dade",
  accent: "#0b5394",
  font: '15px system-ui, "Segoe UI", "Noto Sans", "Liberation Sans", Arial, sans-serif',
  endRoom: 92,

  // Solid, dashed, dotted; each with its own grey as well, but told apart by the dashes.
  dashes: [[], [12, 5], [2, 4], [14, 4, 2, 4]],

  hatch(context) {
    const tile = document.createElement("canvas");
    tile.width = tile.height = 8;
    const pen = tile.getContext("2d");
    pen.strokeStyle = "rgba(11,83,148,.55)";
    pen.beginPath();
    pen.moveTo(0, 8); pen.lineTo(8, 0);
    pen.stroke();
    return context.createPattern(tile, "repeat");
  },

  // lines: [{ name, low, high, mean, dash }] with places in the table.
  make(place, width, height, title, lines, table, holds, hasTime, hooks) {
    const ratio = devicePixelRatio || 1;
    const series = [{}];
    const bands = [];
    const picked = [table[0]];
    for (const line of lines) {
      picked.push(table[line.high], table[line.low], table[line.mean]);
      const at = series.length;
      const edge = { stroke: "transparent", width: 0, points: { show: false } };
      series.push(edge, { ...edge }, { label: line.name, stroke: line.ink || Strip.ink, width: line.width || 2, dash: line.dash, points: { show: false } });
      bands.push({ series: [at, at + 1], fill: line.fill || "rgba(20,24,28,.22)" });
    }
    const [bottom, summit] = Strip.frame(table, lines, holds);
    const axis = { stroke: Strip.ink, font: Strip.font, ticks: { stroke: Strip.ink, width: 1 }, grid: { stroke: Strip.rule, width: 1 } };
    const options = {
      width, height, series, bands,
      padding: [38, Strip.endRoom, hasTime ? 0 : 6, 0],
      legend: { show: false },
      cursor: { sync: { key: hooks.sync }, drag: { x: true, y: false, setScale: false }, points: { show: false } },
      scales: { x: { time: false }, y: { range: () => [bottom, summit] } },
      axes: [
        { ...axis, show: hasTime, size: 34, values: (plot, marks) => marks.map(mark => `${+mark.toFixed(3)} s`) },
        { ...axis, size: 64, space: 22 },
      ],
      hooks: {
        drawClear: [plot => Strip.drawHolds(plot, holds, lines, ratio)],
        draw: [plot => Strip.drawBeyond(plot, lines, ratio), plot => Strip.drawNames(plot, lines, ratio)],
        setSelect: [plot => hooks.select(plot)],
        setCursor: [plot => hooks.cursor(plot)],
      },
    };
    const plot = new uPlot(options, picked, place);
    plot.root.setAttribute("role", "img");
    plot.root.setAttribute("aria-label", title);
    return { plot, feed: table => { const data = [table[0]]; for (const line of lines) { data.push(table[line.high], table[line.low], table[line.mean]); } plot.setData(data, false); } };
  },

  // One frame for the whole recording. Ignition noise makes single wild samples: they are marked at the frame's edge, and do not flatten the rest.
  frame(table, lines, holds) {
    const limits = holds.flatMap(hold => hold.limits).filter(limit => lines.some(line => line.quantity === limit.quantity)).map(limit => limit.max ?? limit.min);
    const sorted = place => lines.flatMap(line => table[line[place]]).filter(value => value != null).sort((a, b) => a - b);
    const [lows, highs] = [sorted("low"), sorted("high")];
    if (lows.length === 0) {
      return [0, 1];
    }
    const summit = Math.max(Math.min(highs.at(-1), 1.25 * highs[Math.floor(0.98 * (highs.length - 1))]), ...limits, 1e-3);
    const bottom = Math.min(0, Math.max(lows[0], lows[Math.floor(0.01 * (lows.length - 1))]));
    const room = 0.06 * (summit - bottom);
    return [bottom - room / 2, summit + room];
  },

  drawHolds(plot, holds, lines, ratio) {
    const pen = plot.ctx;
    const { left, top, width, height } = plot.bbox;
    pen.save();
    pen.beginPath();
    pen.rect(left, 0, width, top + height);
    pen.clip();
    pen.font = Strip.font.replace(/^\d+/, size => String(Math.round(size * ratio)));
    pen.textAlign = "center";
    // Two rows of names over the picture: what has no room in the lower one stands in the upper.
    const free = [left, left];
    for (const hold of holds) {
      const x0 = plot.valToPos(hold.from, "x", true);
      const x1 = Math.max(x0 + 2 * ratio, plot.valToPos(hold.to, "x", true));
      if (x1 < left || x0 > left + width) {
        continue;
      }
      pen.fillStyle = "#e9edf0";
      pen.fillRect(x0, top, x1 - x0, height);
      Strip.drawLimits(plot, pen, hold, lines, x0, x1, ratio);
      const name = String(hold.number ?? hold.step);
      const half = pen.measureText(name).width / 2 + 3 * ratio;
      const middle = Math.min(Math.max((x0 + x1) / 2, left + half), left + width - half);
      const row = middle - half >= free[0] ? 0 : middle - half >= free[1] ? 1 : -1;
      if (row >= 0) {
        pen.fillStyle = Strip.ink;
        pen.fillText(name, middle, top - (6 + 16 * row) * ratio);
        free[row] = middle + half;
      }
    }
    pen.restore();
  },

  drawLimits(plot, pen, hold, lines, x0, x1, ratio) {
    const { top, height } = plot.bbox;
    for (const limit of hold.limits.filter(limit => lines.some(line => line.quantity === limit.quantity))) {
      const y0 = limit.max === null ? top : Math.max(top, plot.valToPos(limit.max, "y", true));
      const y1 = limit.min === null ? top + height : Math.min(top + height, plot.valToPos(limit.min, "y", true));
      pen.fillStyle = plot.hatch ??= Strip.hatch(pen);
      pen.fillRect(x0, y0, x1 - x0, y1 - y0);
      pen.strokeStyle = Strip.accent;
      pen.lineWidth = 2 * ratio;
      pen.setLineDash(lines.find(line => line.quantity === limit.quantity).dash.map(length => length * ratio));
      pen.beginPath();
      for (const [value, y] of [[limit.max, y0], [limit.min, y1]]) {
        if (value !== null) {
          pen.moveTo(x0, y); pen.lineTo(x1, y);
        }
      }
      pen.stroke();
    }
  },

  drawBeyond(plot, lines, ratio) {
    const pen = plot.ctx;
    const { top, height } = plot.bbox;
    const { min: bottom, max: summit } = plot.scales.y;
    const { min: from, max: to } = plot.scales.x;
    const size = 4 * ratio;
    const mark = (x, y, way) => {
      pen.beginPath();
      pen.moveTo(x - size, y + way * size); pen.lineTo(x, y); pen.lineTo(x + size, y + way * size);
      pen.fill();
    };
    pen.save();
    pen.fillStyle = Strip.ink;
    const x = plot.data[0];
    lines.forEach((_, n) => {
      const [highs, lows] = [plot.data[3 * n + 1], plot.data[3 * n + 2]];
      const free = { up: -Infinity, down: -Infinity };
      for (let i = plot.valToIdx(from); i < x.length && x[i] <= to; i++) {
        const at = highs[i] > summit || lows[i] < bottom ? plot.valToPos(x[i], "x", true) : 0;
        if (highs[i] > summit && at >= free.up) {
          mark(at, top, 1);
          free.up = at + 6 * size;
        }
        if (lows[i] < bottom && at >= free.down) {
          mark(at, top + height, -1);
          free.down = at + 6 * size;
        }
      }
    });
    pen.restore();
  },

  drawNames(plot, lines, ratio) {
    const pen = plot.ctx;
    const { left, top, width, height } = plot.bbox;
    pen.save();
    pen.font = Strip.font.replace(/^\d+/, size => String(Math.round(size * ratio)));
    pen.fillStyle = Strip.ink;
    pen.textAlign = "left";
    const ends = lines.map((line, n) => ({ line, y: Strip.endOf(plot, 3 * n + 3) })).filter(end => end.y !== null).sort((a, b) => a.y - b.y);
    let lowest = top + 8 * ratio;
    for (const end of ends) {
      end.y = Math.max(end.y, lowest);
      lowest = end.y + 17 * ratio;
    }
    // The tails of the lowest name's letters still lie on the strip.
    const below = Math.max(0, lowest - 17 * ratio - (top + height - 4 * ratio));
    for (const { line, y: wanted } of ends) {
      const y = wanted - below;
      const x = left + width + 4 * ratio;
      pen.strokeStyle = line.ink || Strip.ink;
      pen.lineWidth = 2 * ratio;
      pen.setLineDash(line.dash.map(length => length * ratio));
      pen.beginPath();
      pen.moveTo(x, y); pen.lineTo(x + 20 * ratio, y);
      pen.stroke();
      pen.fillText(line.name, x + 24 * ratio, y + 5 * ratio);
    }
    pen.restore();
  },

  // Where a line leaves the picture.
  endOf(plot, series) {
    const { max } = plot.scales.x;
    const x = plot.data[0];
    const y = plot.data[series];
    for (let i = plot.valToIdx(max); i >= 0; i--) {
      if (x[i] <= max && y[i] !== null && y[i] !== undefined) {
        return plot.valToPos(y[i], "y", true);
      }
    }
    return null;
  },
};
