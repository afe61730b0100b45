// One hooping as it lies in the hoop: field, strips, marks, and its needle path as far as it has been sewn.

import { colours, dyed, inThread, lengthInWords, lettering, onTheme, sharpen } from './colours.js';
import { stitchesOf } from './data.js';
import { drawThread } from './thread.js';

export async function fetchHooping(layout, number) {
  const [map, path] = await Promise.all([fetch(`hooping/${layout}/${number}`), fetch(`hooping/${layout}/${number}/path`)]);
  if (map.status !== 200) return null;
  return { map: await map.json(), path: path.status === 200 ? stitchesOf(await path.arrayBuffer()) : null };
}

export class HoopPicture {
  constructor(canvas, inches) {
    this.canvas = canvas;
    this.inches = inches;
    this.hooping = null;
    this.until = 0;
    this.sewn = null;       // what is drawn so far, laid down again when more is sewn
    this.colours = colours();
    this.offTheme = onTheme(() => { this.colours = colours(); this.#afresh(); });
    this.resized = new ResizeObserver(() => this.#afresh());
    this.resized.observe(canvas);
  }

  dispose() {
    this.offTheme();
    this.resized.disconnect();
  }

  take(hooping, until) {
    this.hooping = hooping;
    this.until = until ?? hooping?.path?.count ?? 0;
    this.#afresh();
  }

  sewTo(step) {
    this.until = step;
    this.draw();
  }

  #afresh() {
    this.sewn = null;
    this.draw();
  }

  draw() {
    if (!this.hooping) return;
    const { map, path } = this.hooping;
    const box = { width: this.canvas.clientWidth, height: this.canvas.clientHeight };
    if (box.width < 1) return;
    const ratio = sharpen(this.canvas, box.width, box.height);
    const [l, b, r, t] = map.field;
    const scale = Math.min((box.width - 24) / (r - l), (box.height - 24) / (t - b));
    const x0 = (box.width - (r - l) * scale) / 2 - l * scale, y0 = (box.height - (t - b) * scale) / 2 + t * scale;
    const plane = { scale, x: mm => x0 + mm * scale, y: mm => y0 - mm * scale, x0, y0, ratio };
    const g = this.canvas.getContext('2d', { alpha: false });
    g.setTransform(ratio, 0, 0, ratio, 0, 0);
    this.#ground(g, box, plane, map);
    if (path) {
      this.#thread(path, plane, map);
      g.setTransform(1, 0, 0, 1, 0, 0);
      g.drawImage(this.sewn.canvas, 0, 0);
      g.setTransform(ratio, 0, 0, ratio, 0, 0);
      if (this.until < path.count && this.until > 0) this.#needle(g, path, plane);
    }
    this.#marks(g, plane, map);
  }

  /** The colours of this hooping's cloth and threads. */
  get own() { return dyed(this.colours, this.hooping?.map); }

  #ground(g, box, p, map) {
    const c = this.own;
    g.fillStyle = c.table;
    g.fillRect(0, 0, box.width, box.height);
    for (const strip of map.strips) {
      const edges = (strip.edges ?? [map.cut / 2, map.finished / 2, -map.finished / 2, -map.cut / 2].map(y => [-1e4, strip.y + y, 1e4, strip.y + y]));
      this.#band(g, p, edges[0], edges[3], c.turnIn);
      this.#band(g, p, edges[1], edges[2], c.cotton);
      g.strokeStyle = c.weld;
      g.setLineDash([5, 4]);
      g.lineWidth = 1;
      for (const edge of [edges[1], edges[2]]) {
        g.beginPath();
        this.#along(g, p, edge);
        g.stroke();
      }
      g.setLineDash([]);
    }
    const [l, b, r, t] = map.field;
    g.strokeStyle = c.onTable;
    g.lineWidth = 3;
    g.beginPath();
    g.roundRect(p.x(l), p.y(t), (r - l) * p.scale, (t - b) * p.scale, 10);
    g.stroke();
  }

  #band(g, p, upper, lower, colour) {
    g.fillStyle = colour;
    g.beginPath();
    this.#along(g, p, upper);
    for (let i = lower.length - 2; i >= 0; i -= 2) g.lineTo(this.#inSight(p.x(lower[i])), p.y(lower[i + 1]));
    g.fill();
  }

  #along(g, p, edge) {
    for (let i = 0; i < edge.length; i += 2) {
      const x = this.#inSight(p.x(edge[i])), y = p.y(edge[i + 1]);
      if (i === 0) g.moveTo(x, y); else g.lineTo(x, y);
    }
  }

  #inSight(x) { return Math.max(-2000, Math.min(8000, x)); }

  #thread(path, p, map) {
    if (!this.sewn || this.sewn.until > this.until || this.sewn.path !== path) {
      const canvas = document.createElement('canvas');
      canvas.width = this.canvas.width;
      canvas.height = this.canvas.height;
      this.sewn = { canvas, until: 1, path };
    }
    const g = this.sewn.canvas.getContext('2d');
    g.setTransform(p.ratio * p.scale, 0, 0, -p.ratio * p.scale, p.ratio * p.x0, p.ratio * p.y0);
    for (const { from, to, thread } of threadsOf(path, map)) {
      const first = Math.max(from, this.sewn.until), last = Math.min(to, this.until);
      if (first < last) drawThread(g, path, first, last, [-1e4, -1e4, 1e4, 1e4], map.thread, p.scale, inThread(this.own, thread));
    }
    this.sewn.until = Math.max(1, this.until);
  }

  #needle(g, path, p) {
    const x = p.x(path.at[2 * this.until - 2]), y = p.y(path.at[2 * this.until - 1]);
    g.strokeStyle = this.own.madder;
    g.lineWidth = 2;
    g.beginPath();
    g.arc(x, y, 7, 0, 7);
    g.moveTo(x, y - 13);
    g.lineTo(x, y - 3);
    g.moveTo(x - 12, y);
    g.lineTo(x - 8, y);
    g.moveTo(x + 8, y);
    g.lineTo(x + 12, y);
    g.stroke();
  }

  #marks(g, p, map) {
    const c = this.own;
    g.font = `600 14px ${lettering}`;
    g.textAlign = 'center';
    for (const strip of map.strips) {
      strip.marks.forEach((at, i) => {
        const x = p.x(at), y = p.y(strip.markY), arm = Math.max(6, 3 * p.scale);
        g.strokeStyle = c.madder;
        g.lineWidth = 2;
        g.beginPath();
        g.moveTo(x - arm, y);
        g.lineTo(x + arm, y);
        g.moveTo(x, y - arm);
        g.lineTo(x, y + arm);
        g.stroke();
        const text = lengthInWords(strip.marksOnCloth[i], this.inches, true);
        const wide = g.measureText(text).width + 8, ty = strip.markY < strip.y ? y + arm + 16 : y - arm - 6;
        g.fillStyle = c.cotton;
        g.fillRect(x - wide / 2, ty - 14, wide, 19);
        g.fillStyle = c.madder;
        g.fillText(text, x, ty);
      });
    }
  }
}

const stop = 3, mark = 1; // as the server counts actions and kinds

/** The parts of a path that are sewn with one thread each: its stops part them, and before the first may lie the marks. */
function threadsOf(path, map) {
  if ((map.order?.length ?? 0) < 2) return [{ from: 0, to: path.count, thread: map.order?.[0] ?? 0 }];
  const parts = [];
  for (let i = 0, from = 0, turn = 0; i < path.count; i++) {
    if (path.action[i] !== stop && i < path.count - 1) continue;
    const isMarks = turn === 0 && path.kind.subarray(from, i).includes(mark);
    parts.push({ from, to: i + 1, thread: map.order[Math.min(turn, map.order.length - 1)] });
    if (!isMarks) turn++;
    from = i + 1;
  }
  return parts;
}
