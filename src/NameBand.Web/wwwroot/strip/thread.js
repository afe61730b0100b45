// Thread as it lies on cloth: a lit round fibre whose sheen depends on which way the stitch runs.

const shades = 24;
const light = Math.atan2(-0.62, -0.5); // lamp to the upper left

/** Strokes of `count` steps of a path into a plane already set to mm, y up. Only what reaches into the box is drawn. */
export function drawThread(g, path, from, to, box, widthMm, pxPerMm, colours) {
  const strokes = shadesOf(colours);
  const edge = widthMm * pxPerMm >= 2.2;
  // From far off the sheen of single stitches runs together into patches; there it is kept low.
  const sheen = edge ? 0.34 : 0.16, dark = edge ? 0.36 : 0.34;
  g.lineCap = edge ? 'round' : 'butt';
  const { at, kind, action } = path;
  const reach = widthMm;
  for (let i = Math.max(1, from); i < to; i++) {
    if (action[i] !== 0 || action[i - 1] > 1) continue;
    const x0 = at[2 * i - 2], y0 = at[2 * i - 1], x1 = at[2 * i], y1 = at[2 * i + 1];
    if ((x0 < box[0] - reach && x1 < box[0] - reach) || (x0 > box[2] + reach && x1 > box[2] + reach)
      || (y0 < box[1] - reach && y1 < box[1] - reach) || (y0 > box[3] + reach && y1 > box[3] + reach)) continue;
    if (action[i - 1] === 1 && kind[i - 1] === 0 && i < 2) continue;
    const dx = x1 - x0, dy = y1 - y0;
    // Light runs off a fibre that points at the lamp and lies bright across one that stands square to it.
    const angle = Math.atan2(-dy, dx);
    const square = Math.abs(Math.sin(angle - light));
    const mark = kind[i] === 1;
    const under = kind[i] === 3 ? 0.25 : 0;
    const ramp = mark ? strokes.mark : strokes.thread;
    const level = Math.max(0, Math.min(shades - 1, Math.round((dark + sheen * square - under + ((i & 1) ? 0.06 : 0)) * (shades - 1))));
    g.beginPath();
    g.moveTo(x0, y0);
    g.lineTo(x1, y1);
    if (edge) {
      g.lineWidth = widthMm;
      g.strokeStyle = ramp[Math.max(0, level - 9)];
      g.stroke();
      g.lineWidth = widthMm * 0.66;
      g.strokeStyle = ramp[level];
      g.stroke();
      if (widthMm * pxPerMm >= 6) {
        g.beginPath();
        g.moveTo(x0 + dx * 0.2, y0 + dy * 0.2);
        g.lineTo(x0 + dx * 0.8, y0 + dy * 0.8);
        g.lineWidth = widthMm * 0.2;
        g.strokeStyle = ramp[Math.min(shades - 1, level + 6)];
        g.stroke();
      }
    } else {
      g.lineWidth = widthMm;
      g.strokeStyle = ramp[level];
      g.stroke();
    }
  }
}

const known = new Map();

function shadesOf(colours) {
  const key = colours.indigo.join() + colours.basting.join();
  if (!known.has(key)) known.set(key, { thread: ramp(colours.indigo), mark: ramp(colours.basting) });
  return known.get(key);
}

function ramp(stops) {
  const out = [];
  for (let i = 0; i < shades; i++) {
    const at = i / (shades - 1) * (stops.length - 1);
    const k = Math.min(stops.length - 2, Math.floor(at));
    out.push(mix(stops[k], stops[k + 1], at - k));
  }
  return out;
}

function mix(a, b, part) {
  const channel = (c, i) => parseInt(c.slice(1 + 2 * i, 3 + 2 * i), 16);
  const m = i => Math.round(channel(a, i) + (channel(b, i) - channel(a, i)) * part);
  return `rgb(${m(0)},${m(1)},${m(2)})`;
}
