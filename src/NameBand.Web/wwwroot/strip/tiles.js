// Pictures of names, cut into columns and kept, so that moving along the strip only lays them down again.

import { inThread } from './colours.js';
import { shapeInto } from './data.js';
import { drawThread } from './thread.js';

const columnPx = 512;
const mostBytes = 160e6;

export class Tiles {
  constructor() {
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
  }

  /** Lays a name down with its left edge at x and its strip's centre line at y; false: it has to be drawn first. */
  lay(g, name, x, y, halfMm, from, to) {
    const last = Math.floor((name.width * this.scale + 2) / columnPx);
    let whole = true;
    for (let k = Math.max(0, Math.floor((from - x) / columnPx)); k <= Math.min(last, Math.floor((to - x) / columnPx)); k++) {
      const tile = this.now.get(`${name.index}/${k}`);
      if (tile) {
        g.drawImage(tile.canvas, x + k * columnPx - 1, y - halfMm * this.scale - 1, tile.canvas.width / this.ratio, tile.canvas.height / this.ratio);
      } else {
        whole = false;
        this.#standIn(g, name, x, y, halfMm, k);
      }
    }
    return whole;
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

  /** Draws the columns of a name that are seen and missing, or that can be drawn better now; false: the time was over before all were drawn. */
  draw(data, name, x, halfMm, from, to, withThread, colours, until) {
    const last = Math.floor((name.width * this.scale + 2) / columnPx);
    const thread = withThread ? data.threads.get(name.index) : null;
    for (let k = Math.max(0, Math.floor((from - x) / columnPx)); k <= Math.min(last, Math.floor((to - x) / columnPx)); k++) {
      const key = `${name.index}/${k}`;
      const tile = this.now.get(key);
      if (tile && (tile.isThread || !thread)) continue;
      if (performance.now() > until) return false;
      this.#paint(data, name, k, halfMm, thread, colours, key, tile);
    }
    return true;
  }

  #paint(data, name, k, halfMm, thread, colours, key, old) {
    const s = this.scale, r = this.ratio;
    const width = Math.min(columnPx, name.width * s + 2 - k * columnPx) + 2;
    const canvas = old?.canvas ?? document.createElement('canvas');
    canvas.width = Math.ceil(width * r);
    canvas.height = Math.ceil((2 * halfMm * s + 2) * r);
    const g = canvas.getContext('2d');
    g.setTransform(r * s, 0, 0, -r * s, r * (1 - k * columnPx), r * (1 + halfMm * s));
    const x0 = originOf(data, name);
    g.translate(x0, isCurved(data, name) ? 0 : name.base);
    if (thread) {
      const left = (k * columnPx - 2) / s - x0;
      drawThread(g, thread, 1, thread.count, [left, -1e3, left + (columnPx + 4) / s, 1e3], data.map.thread, s, inThread(colours, name.thread));
    } else {
      outline(g, data, name, colours);
    }
    if (!old) this.bytes += canvas.width * canvas.height * 4;
    this.now.set(key, { canvas, isThread: !!thread });
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
