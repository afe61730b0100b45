// The strips' cloth with all their names, painted once on one large picture that is laid on the garment.

import { dyed, inThread } from '../strip/colours.js';
import { isCurved, originOf, outline } from '../strip/tiles.js';

const mostPx = 6e6;          // of the whole picture
const widePx = 4096;         // what any graphics card takes
const finestPxPerMm = 5;
const plainBelowPx = 4;      // letters lower than this are bars
const betweenPx = 3;         // rows keep their colours to themselves when they are seen from far off
const sliceMs = 9;
const unsewn = 0.42;

/** Where each stretch of each strip lies on the picture: rows of equal length, one below the other. */
export function rowsOf(map) {
  const whole = map.rounds.reduce((sum, r) => sum + r.length, 0);
  const scale = Math.min(finestPxPerMm, Math.sqrt(mostPx / Math.max(1, whole * map.finished)));
  const tall = Math.max(2, Math.ceil(map.finished * scale)) + 2 * betweenPx;
  const longest = widePx / scale, rows = [];
  map.rounds.forEach((r, round) => {
    const count = Math.max(1, Math.ceil(r.length / longest));
    for (let i = 0; i < count; i++) rows.push({ round, from: r.length * i / count, to: r.length * (i + 1) / count, top: rows.length * tall });
  });
  return { rows, scale, tall, width: widePx, height: Math.max(1, rows.length * tall) };
}

/** Paints in slices, so that the page answers meanwhile; tells when it is whole. */
export class Letters {
  constructor(data, colours, sewn, done) {
    Object.assign(this, { data, map: data.map, colours: dyed(colours, data.map), sewn, done });
    this.plan = rowsOf(data.map);
    this.canvas = document.createElement('canvas');
    this.canvas.width = this.plan.width;
    this.canvas.height = this.plan.height;
    this.g = this.canvas.getContext('2d', { alpha: false });
    this.isPlain = data.map.height * this.plan.scale < plainBelowPx;
    this.todo = [];
    this.#cloth();
    for (const row of this.plan.rows) for (const name of data.within(row.round, row.from, row.to)) this.todo.push([row, name]);
    if (!this.isPlain) data.wantShapes(this.todo.map(t => t[1]));
    this.#later();
  }

  dispose() { cancelAnimationFrame(this.frame); clearTimeout(this.wait); }

  #later() { this.frame = requestAnimationFrame(() => this.#slice()); }

  #slice() {
    // Names of a layout that is no more have no rounds to stand on.
    if (this.data.map !== this.map) return;
    const until = performance.now() + sliceMs, missing = [];
    while (this.todo.length > 0 && performance.now() < until) {
      const [row, name] = this.todo.pop();
      if (this.isPlain || this.data.isDrawable(name)) this.#paint(row, name); else missing.push([row, name]);
    }
    this.todo.push(...missing);
    if (this.todo.length === 0) { this.done(); return; }
    // What is still being fetched is asked for again in a moment.
    if (missing.length === 0) { this.#later(); return; }
    this.done();
    this.wait = setTimeout(() => { this.data.wantShapes(missing.map(m => m[1])); this.#later(); }, 250);
  }

  #cloth() {
    const { g, plan, colours: c } = this;
    g.fillStyle = c.cotton;
    g.fillRect(0, 0, plan.width, plan.height);
    // A seam along each edge holds the strip.
    g.strokeStyle = c.turnIn;
    g.lineWidth = Math.max(1, 0.7 * plan.scale);
    for (const row of plan.rows) {
      for (const y of [row.top + betweenPx + 1.6 * plan.scale, row.top + plan.tall - betweenPx - 1.6 * plan.scale]) {
        g.setLineDash([3 * plan.scale, 1.2 * plan.scale]);
        g.beginPath();
        g.moveTo(0, y);
        g.lineTo(plan.width, y);
        g.stroke();
      }
    }
    g.setLineDash([]);
  }

  #paint(row, name) {
    const { g, plan, data, colours: c } = this, s = plan.scale;
    const middle = row.top + plan.tall / 2, isSewn = this.sewn.has(name.index);
    g.save();
    g.beginPath();
    g.rect(0, row.top + betweenPx, (row.to - row.from) * s, plan.tall - 2 * betweenPx);
    g.clip();
    g.globalAlpha = isSewn ? 1 : unsewn;
    if (this.isPlain) {
      g.fillStyle = inThread(c, name.thread).thread;
      const high = Math.max(1.5, data.map.height * s);
      g.fillRect((name.start - row.from) * s, middle - name.base * s - high, Math.max(1, name.width * s), high);
    } else {
      // On a curved strip a name's letters stand about its middle, on the strip's centre line.
      g.translate((name.start - row.from + originOf(data, name)) * s, middle);
      g.scale(s, -s);
      g.translate(0, isCurved(data, name) ? 0 : name.base);
      if (isSewn && s > 1.5) this.#raised(name);
      outline(g, data, name, c);
    }
    g.restore();
  }

  /** Thread lies on the cloth and throws a little shadow. */
  #raised(name) {
    const { g, data, colours } = this;
    const dark = { ...colours, threads: undefined, thread: '#00000055', quiet: '#00000055' };
    g.save();
    g.translate(0.28, -0.32);
    outline(g, data, name, dark);
    g.restore();
  }
}
