// Pictures of names, cut into columns and kept, so that moving along the strip only lays them down again.

import { inThread } from './colours.js';
import { shapeInto } from './data.js';
import { Painting } from './painting.js';
import { drawThread } from './thread.js';

const columnPx = 512;
const mostBytes = 160e6;

export class Tiles {
  /** @param {() => void} changed told when a picture came from the worker. */
  constructor(changed) {
    this.changed = changed;
    this.now = new Map();
    this.before = new Map();
    this.bytes = 0;
    this.key = '';
    this.scale = 1;
    this.scaleBefore = 1;
  }

  /** A new zoom, layout or colour: what was drawn stands in until it is drawn anew. */
  begin(layout, scale, ratio, theme) {
    const key = `${layout} ${scale} ${ratio} ${theme}`;
    if (key === this.key) return;
    const same = this.key.split(' ')[0] === String(layout);
    if (same && this.now.size > 0) {
      this.before = this.now;
      this.scaleBefore = this.scale;
    } else if (!same) {
      this.before = new Map();
    }
    this.now = new Map();
    this.bytes = 0;
    this.key = key;
    this.scale = scale;
    this.ratio = ratio;
    this.painting?.anew();
  }

  /** From the first picture on a worker paints, where the browser has one. */
  begun() {
    this.painting ??= new Painting(answer => { if (answer) this.#put(answer.key, answer.picture, answer.isThread); this.changed(); });
  }

  get isAside() { return Boolean(this.painting && !this.painting.isGone); }

  dispose() { this.painting?.dispose(); }

  /** Lays a name down with its left edge at x and its strip's centre line at y; false: it, or its thread, has to be painted first. */
  lay(g, name, x, y, halfMm, from, to, withThread) {
    let whole = true;
    for (const k of this.#columns(name, x, from, to)) {
      const tile = this.now.get(`${name.index}/${k}`);
      if (tile) {
        g.drawImage(tile.canvas, x + k * columnPx - 1, y - halfMm * this.scale - 1, tile.canvas.width / this.ratio, tile.canvas.height / this.ratio);
        if (withThread && !tile.isThread) whole = false;
      } else {
        whole = false;
        this.#standIn(g, name, x, y, halfMm, k);
      }
    }
    return whole;
  }

  /** Whether every column of a name that is seen is painted, or has something of before to stand in for it. */
  has(name, x, from, to) {
    return this.#columns(name, x, from, to).every(k => this.now.has(`${name.index}/${k}`) || this.before.has(`${name.index}/${k}`));
  }

  #columns(name, x, from, to) {
    const last = Math.floor((name.width * this.scale + 2) / columnPx), all = [];
    for (let k = Math.max(0, Math.floor((from - x) / columnPx)); k <= Math.min(last, Math.floor((to - x) / columnPx)); k++) all.push(k);
    return all;
  }

  #standIn(g, name, x, y, halfMm, k) {
    const grow = this.scale / this.scaleBefore;
    const first = Math.floor(k * columnPx / grow / columnPx);
    const last = Math.floor(((k + 1) * columnPx) / grow / columnPx);
    g.save();
    g.beginPath();
    g.rect(x + k * columnPx, y - halfMm * this.scale, columnPx, 2 * halfMm * this.scale);
    g.clip();
    for (let j = first; j <= last && j - first < 12; j++) {
      const tile = this.before.get(`${name.index}/${j}`);
      if (tile) {
        g.drawImage(tile.canvas, x + (j * columnPx - 1) * grow, y - (halfMm * this.scaleBefore + 1) * grow,
          tile.canvas.width / this.ratio * grow, tile.canvas.height / this.ratio * grow);
      }
    }
    g.restore();
  }

  /** Has the columns of a name painted that are seen and missing, or that can be painted better now; by the page itself as long as there is time. false: it was over. */
  paint(data, name, x, halfMm, from, to, withThread, colours, until) {
    const thread = withThread ? data.threads.get(name.index) : null;
    for (const k of this.#columns(name, x, from, to)) {
      const key = `${name.index}/${k}`, tile = this.now.get(key);
      if (tile && (tile.isThread || !thread)) continue;
      const job = this.#job(name, k, halfMm, colours, key, Boolean(thread));
      if (this.isAside) { this.painting.ask(data, job); continue; }
      if (performance.now() > until) return false;
      const canvas = tile?.canvas ?? document.createElement('canvas');
      canvas.width = job.width;
      canvas.height = job.height;
      paintColumn(canvas.getContext('2d'), data, job, thread);
      this.#put(key, canvas, job.isThread);
    }
    return true;
  }

  #job(name, k, halfMm, colours, key, isThread) {
    const s = this.scale, r = this.ratio, wide = Math.min(columnPx, name.width * s + 2 - k * columnPx) + 2;
    return { key, name, k, halfMm, colours, isThread, scale: s, ratio: r, width: Math.max(1, Math.ceil(wide * r)), height: Math.max(1, Math.ceil((2 * halfMm * s + 2) * r)) };
  }

  #put(key, canvas, isThread) {
    const old = this.now.get(key)?.canvas;
    if (!old) this.bytes += canvas.width * canvas.height * 4; else if (old !== canvas) old.close?.();
    this.now.set(key, { canvas, isThread });
    if (this.bytes > mostBytes) this.#forget();
  }

  #forget() {
    for (const [key, tile] of this.now) {
      if (this.bytes < mostBytes / 2) break;
      this.bytes -= tile.canvas.width * tile.canvas.height * 4;
      this.now.delete(key);
    }
    this.before = new Map();
  }
}

/** Paints a column of a name: its thread where that is known, else its outline. */
export function paintColumn(g, data, { name, k, halfMm, colours, scale: s, ratio: r }, thread) {
  g.setTransform(r * s, 0, 0, -r * s, r * (1 - k * columnPx), r * (1 + halfMm * s));
  const x0 = originOf(data, name);
  g.translate(x0, isCurved(data, name) ? 0 : name.base);
  if (thread) {
    const left = (k * columnPx - 2) / s - x0;
    drawThread(g, thread, 1, thread.count, [left, -1e3, left + (columnPx + 4) / s, 1e3], data.map.thread, s, inThread(colours, name.thread));
  } else {
    outline(g, data, name, colours);
  }
}

export const isCurved = (data, name) => Boolean(data.map.rounds[name.round].curve);

/** From the left edge of a name's width to the origin of its stitches: on a curved strip that is its middle, on the strip's centre line. */
export const originOf = (data, name) => isCurved(data, name) ? name.width / 2 : 0;

/** A name's plain outline; the plane's origin is that of its stitches: the left edge of its width on its base line. */
export function outline(g, data, name, colours) {
  const h = data.map.height;
  g.save();
  g.fillStyle = name.gone ? colours.quiet : inThread(colours, name.thread).thread;
  if (isCurved(data, name)) {
    g.scale(h, h);
    shapeInto(g, data, name, standing(data, name));
  } else {
    g.translate(data.map.pull, 0);
    g.scale(h, h);
    g.translate(-name.ink, 0);
    shapeInto(g, data, name);
  }
  g.restore();
}

/** Stands a letter on the arc about the middle of its name, as it is sewn: turned about the middle of its own ink, and not bent. */
function standing(data, name) {
  const h = data.map.height, { radius, centre, above } = data.map.rounds[name.round].curve;
  const sign = above ? 1 : -1, onArc = centre - sign * name.base;
  const middle = name.ink + (name.width - 2 * data.map.pull) / (2 * h);
  return (g, x, y, ink) => {
    const angle = (x + ink - middle) * h * (radius / onArc) / radius;
    g.translate(onArc * Math.sin(angle) / h, sign * (centre - onArc * Math.cos(angle)) / h);
    g.rotate(sign * angle);
    g.translate(-ink, y);
  };
}
