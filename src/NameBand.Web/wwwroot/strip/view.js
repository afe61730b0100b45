// The picture of the strips: one frame when something changed, and none when nothing did.

import { Camera, tapePx } from './camera.js';
import { colours, dyed, inThread, isStill, onTheme, sharpen } from './colours.js';
import { drawThread } from './thread.js';
import { Tiles, isCurved, originOf, outline } from './tiles.js';
import * as paint from './paint.js';

const plainBelowPx = 5;      // letters lower than this are drawn as bars
const threadFromPxPerMm = 2; // from here on thread is seen as thread
const beginFromPxPerMm = 2; // as far off as a newcomer's first look goes so that no strip is cut off
const directFromPxPerMm = 20; // from here on only the stitches in sight are drawn, without tiles

export class View {
  constructor(canvas, box, data, moved) {
    this.canvas = canvas;
    this.box = box;
    this.data = data;
    this.moved = moved;
    this.camera = new Camera();
    this.tiles = new Tiles(() => this.changed());
    this.isNew = true;
    this.isMoved = false; // somebody went somewhere on it
    this.inches = false;
    this.showLoad = false;
    this.pressed = null;
    this.pointed = null;
    this.carried = null; // the name that is being carried, where it is, and beside which it would be let go
    this.preview = null; // height in mm at which letters are looked at and not laid out yet
    this.colours = colours();
    this.frame = 0;
    this.offTheme = onTheme(() => { this.colours = colours(); this.changed(); });
    this.resized = new ResizeObserver(() => this.#resize());
    this.resized.observe(box);
  }

  dispose() {
    this.offTheme();
    this.resized.disconnect();
    cancelAnimationFrame(this.frame);
    this.tiles.dispose();
  }

  /** Where one is, for when the strip is put up again. */
  kept() {
    const { scale, left, up, only } = this.camera;
    return this.isNew ? null : { scale, left, up, only, inches: this.inches, width: this.camera.width, height: this.camera.height, isMoved: this.isMoved };
  }

  resume({ inches, isMoved, ...place }) {
    this.inches = inches;
    this.isMoved = isMoved;
    Object.assign(this.camera, place);
    this.isResumed = true;
  }

  take(map) {
    this.preview = null;
    this.camera.take(map);
    this.byRound = map.rounds.map(() => []);
    for (const hooping of map.hoopings) {
      for (const segment of hooping.segments) this.byRound[segment[0]].push({ hooping, segment });
    }
    if (this.isNew) {
      this.isNew = false;
      this.#resize();
      if (!this.isResumed) this.#begin();
    }
    this.changed();
  }

  // A newcomer sees letters first, at the beginning of the list.
  #begin() {
    this.camera.scale = Math.max(this.camera.leastScale, Math.min(3.8, this.camera.width / 330));
    const { camera } = this, room = camera.height - tapePx;
    if (camera.map.rounds.length === 2) this.#seeBoth(room);
    // A strip that hangs needs more room, and is seen whole.
    while (camera.lanePx > room && camera.scale > 1.1 * camera.leastScale) camera.scale /= 1.05;
    this.camera.left = -1e9;
    this.camera.up = 1e9;
    this.camera.clamp();
  }

  /** Two strips are both seen whole, where the table is high enough for that at a scale that still shows thread. */
  #seeBoth(room) {
    const { camera } = this, begun = camera.scale;
    while (2 * camera.lanePx > room && camera.scale > beginFromPxPerMm) camera.scale = Math.max(beginFromPxPerMm, camera.scale / 1.02);
    if (2 * camera.lanePx > room) camera.scale = begun;
  }

  #resize() {
    const rect = this.box.getBoundingClientRect();
    if (rect.width < 1 || !this.data.map) return;
    const middle = this.camera.mm(this.camera.width / 2);
    this.camera.width = rect.width;
    this.camera.height = rect.height;
    this.camera.left = middle - rect.width / this.camera.scale / 2;
    this.camera.clamp();
    this.changed();
  }

  changed() {
    if (!this.frame && this.data.map) this.frame = requestAnimationFrame(t => this.#draw(t));
  }

  /** Moves there smoothly, or at once for those who asked for less motion. */
  go(to, quick = false) {
    this.isMoved = true;
    if (quick || isStill()) {
      Object.assign(this.camera, { left: to.left, up: to.up, scale: to.scale, only: to.only });
      this.camera.clamp();
      this.way = null;
    } else {
      this.camera.only = to.only;
      this.way = { from: { left: this.camera.left, up: this.camera.up, scale: this.camera.scale }, to, begun: performance.now() };
    }
    this.changed();
  }

  #step(time) {
    if (!this.way) return;
    const part = Math.min(1, Math.max(0, (time - this.way.begun) / 260));
    const eased = part * (2 - part);
    const { from, to } = this.way;
    const middleFrom = from.left + this.camera.width / from.scale / 2, middleTo = to.left + this.camera.width / to.scale / 2;
    this.camera.scale = from.scale * Math.pow(to.scale / from.scale, eased);
    this.camera.left = middleFrom + (middleTo - middleFrom) * eased - this.camera.width / this.camera.scale / 2;
    this.camera.up = from.up + (to.up - from.up) * eased;
    this.camera.clamp();
    if (part >= 1) this.way = null; else this.changed();
  }

  #draw(time) {
    this.frame = 0;
    this.#step(time);
    const { camera, data, own: c } = this;
    const map = data.map;
    const ratio = sharpen(this.canvas, camera.width, camera.height);
    const g = this.canvas.getContext('2d', { alpha: false });
    g.setTransform(ratio, 0, 0, ratio, 0, 0);
    this.tiles.begin(map.layout, camera.scale, ratio, c.key);
    paint.table(g, camera, c);
    const seen = [];
    let drawn = { isPlain: true, isThread: false };
    camera.rounds.forEach((round, lane) => {
      const y = camera.centre(lane);
      if (y + camera.lanePx < tapePx || y - camera.clothPx - camera.sagPx > camera.height) return;
      paint.cloth(g, camera, map, lane, round, c);
      paint.clearPlaces(g, camera, map, lane, round, c);
      paint.joins(g, camera, map, lane, round, c);
      paint.hoopings(g, camera, map, this.byRound, lane, round, data.minutes, c);
      const names = data.within(round, camera.left, camera.right);
      for (const name of names) seen.push({ name, lane });
    });
    if (map.height * camera.scale < plainBelowPx) paint.bars(g, camera, map, seen, c);
    else if (this.preview) this.#previewed(g, seen);
    else drawn = this.#names(g, seen);
    paint.numbers(g, camera, map, seen, c);
    for (const { name, lane } of seen) {
      if (name === this.pressed || name === this.pointed) paint.around(g, camera, map, lane, name, c, name === this.pressed);
    }
    if (this.carried) this.#carried(g, map);
    paint.tape(g, camera, map, this.tapeRound, c, this.inches);
    this.seen = seen.map(s => s.name).filter(n => n.kind !== 'motif');
    this.#tell(drawn);
    this.moved();
  }

  #names(g, seen) {
    const { camera, data, own: c } = this;
    const withThread = data.map.hasPaths && camera.scale >= threadFromPxPerMm;
    const half = data.map.finished / 2;
    const near = camera.rounds.flatMap(r => data.within(r, camera.left - 200 / camera.scale, camera.right + camera.width / camera.scale));
    // The first picture is of outlines and drawn in one go; thread, and what lies beside, is asked for when it stands.
    const isFirst = !this.box.dataset.outlines && seen.every(s => data.isDrawable(s.name));
    if (!isFirst) {
      data.wantShapes(near);
      this.tiles.begun();
    }
    if (withThread && !isFirst) data.wantThread(seen.map(s => s.name));
    const until = performance.now() + 7;
    let isWhole = true, isThread = withThread, isLate = false;
    for (const { name, lane } of seen) {
      if (!data.isDrawable(name)) { isWhole = false; continue; }
      g.save();
      const left = this.#stand(g, name, lane), wants = withThread && !name.gone;
      if (camera.scale >= directFromPxPerMm) {
        this.#direct(g, name, left);
        if (wants && !data.threads.has(name.index)) isThread = false;
      } else {
        const [from, to] = isCurved(data, name) ? [-Infinity, Infinity] : [0, camera.width];
        if (!isFirst && !this.tiles.paint(data, name, left, half, from, to, wants, c, until)) isLate = true;
        // Until it is painted its outlines are seen.
        const isPainted = !isFirst && this.tiles.has(name, left, from, to);
        if (!isPainted) this.#outlined(g, name, left);
        if (!isPainted || !this.tiles.lay(g, name, left, 0, half, from, to, wants)) isThread = false;
      }
      g.restore();
    }
    if (isFirst || isLate) this.changed();
    if (this.showLoad && withThread) this.#load(g, seen);
    return { isPlain: isWhole, isThread };
  }

  /** A name's outline straight onto the table. */
  #outlined(g, name, left) {
    const { camera, data, own: c } = this;
    g.translate(left + originOf(data, name) * camera.scale, 0);
    g.scale(camera.scale, -camera.scale);
    g.translate(0, isCurved(data, name) ? 0 : name.base);
    outline(g, data, name, c);
  }

  /** Outlines alone, larger or smaller about the middle of each name, within the frame in which they are asked for. */
  #previewed(g, seen) {
    const { camera, data, colours: c } = this;
    const part = this.preview / data.map.height;
    for (const { name, lane } of seen) {
      if (!data.isDrawable(name)) continue;
      const isSteady = name.gone || data.map.hoopings.some(h => h.sewn && h.number === name.hooping);
      g.save();
      const left = this.#stand(g, name, lane), curved = isCurved(data, name);
      g.translate(left + originOf(data, name) * camera.scale, 0);
      g.scale(camera.scale, -camera.scale);
      const middle = curved ? 0 : name.width / 2;
      if (!isSteady) {
        g.translate(middle, 0);
        g.scale(part, part);
        g.translate(-middle, 0);
      }
      g.translate(0, curved ? 0 : name.base);
      outline(g, data, name, c);
      g.restore();
    }
    this.box.dataset.preview = this.preview;
  }

  /** The name in the hand, and a line where it would go between two others. */
  #carried(g, map) {
    const { camera, data, own: c } = this, { name, x, y, place } = this.carried;
    if (place) paint.gapMark(g, camera, map, place.lane, place.at, c);
    if (!data.isDrawable(name)) return;
    g.save();
    g.globalAlpha = 0.85;
    g.translate(x - name.width / 2 * camera.scale + (isCurved(data, name) ? name.width / 2 * camera.scale : 0), y);
    g.translate(originOf(data, name) * camera.scale, 0);
    g.scale(camera.scale, -camera.scale);
    g.translate(0, isCurved(data, name) ? 0 : name.base);
    outline(g, data, name, c);
    g.restore();
  }

  /** The row counts, and not what was drawn of it before the last layout. */
  isPressed(name) { return this.pressed?.list === name.list && this.pressed.line === name.line; }

  /** What is sewn stays, and headings go with their groups. */
  canMove(name) {
    return name.kind === 'name' && !name.gone && !this.data.map.hoopings.some(h => h.sewn && h.number === name.hooping);
  }

  /** A name is being carried over a place of the canvas; null: none any more. */
  carry(name, px, py) {
    if (!name && !this.carried) return;
    this.carried = name && { name, x: px, y: py, place: this.#gapAt(name, px, py) };
    this.changed();
  }

  /** Between which names of a round a place lies. */
  #gapAt(name, px, py) {
    const { lane, along } = this.camera.laneAt(py, px), round = this.camera.rounds[lane];
    if (round === undefined) return null;
    const others = this.data.within(round, -1e9, 1e9).filter(n => n.kind === 'name' && !n.gone && (n.list !== name.list || n.line !== name.line)).sort((a, b) => a.start - b.start);
    const next = others.findIndex(n => n.start + n.width / 2 > along);
    const before = next < 0 ? others.at(-1) : others[next - 1], after = next < 0 ? undefined : others[next];
    const at = before && after ? (before.start + before.width + after.start) / 2 : before ? before.start + before.width + 4 : after ? after.start - 4 : along;
    return { lane, at, round: this.data.map.rounds[round].number, other: (before ?? after)?.text ?? null, isAfter: Boolean(before) };
  }

  /** Moves the plane, in pixels, to where a name stands: y to its strip's centre line, turned with a curved strip; returns the name's left edge in it. */
  #stand(g, name, lane) {
    const { camera, data } = this;
    if (!isCurved(data, name)) {
      g.translate(0, camera.centre(lane));
      return camera.x(name.start);
    }
    const [x, y, angle] = camera.at(lane, name.start + name.width / 2);
    g.translate(x, y);
    g.rotate(angle);
    return -name.width / 2 * camera.scale;
  }

  #direct(g, name, left) {
    const { camera, data, own: c } = this;
    const y = g.getTransform().f / g.getTransform().a;
    const curved = isCurved(data, name), base = curved ? 0 : name.base;
    const x = left + originOf(data, name) * camera.scale;
    g.translate(x, 0);
    g.scale(camera.scale, -camera.scale);
    g.translate(0, base);
    const thread = name.gone ? null : data.threads.get(name.index);
    if (thread) {
      const top = y / camera.scale - base;
      const box = curved ? [-1e4, -1e4, 1e4, 1e4] : [-x / camera.scale, top - camera.height / camera.scale, (camera.width - x) / camera.scale, top];
      drawThread(g, thread, 1, thread.count, box, data.map.thread, camera.scale, inThread(c, name.thread));
      if (camera.scale > 30) holes(g, thread, c);
    } else {
      outline(g, data, name, c);
    }
  }

  #load(g, seen) {
    const { camera, data, own: c } = this;
    data.wantLoads(seen.map(s => s.name).filter(n => !n.gone));
    const half = data.map.finished / 2 * camera.scale;
    for (const { name, lane } of seen) {
      const load = data.loads.get(name.index);
      if (!load) continue;
      g.save();
      const left = this.#stand(g, name, lane);
      // The thread steps back, so that the squares are read and not its sheen.
      g.fillStyle = c.cotton;
      g.globalAlpha = 0.72;
      g.fillRect(left - 4, -half, name.width * camera.scale + 8, 2 * half);
      g.globalAlpha = 1;
      g.translate(left + originOf(data, name) * camera.scale, 0);
      g.scale(camera.scale, -camera.scale);
      g.translate(0, isCurved(data, name) ? 0 : name.base);
      paint.load(g, load, c);
      g.restore();
    }
  }

  /** The colours of what lies on the table now. */
  get own() { return dyed(this.colours, this.data.map); }

  // What is drawn, for those who measure and test.
  #tell({ isPlain, isThread }) {
    const { data, camera } = this;
    const layout = String(data.map.layout);
    if (isPlain && this.box.dataset.outlines !== layout) {
      this.box.dataset.outlines = layout;
      this.data.drawn();
    }
    const thread = isPlain && isThread && this.seen.length > 0 ? layout : '';
    if (this.box.dataset.thread !== thread) this.box.dataset.thread = thread;
    this.box.dataset.painter = this.tiles.isAside ? 'worker' : 'page';
    this.box.dataset.scale = camera.scale.toFixed(3);
    this.box.dataset.left = camera.left.toFixed(1);
  }

  /** The round whose cloth the tape measures: that of the name pointed at or pressed, else the uppermost in sight. */
  get tapeRound() {
    const { camera, data } = this;
    const name = this.pointed ?? this.pressed;
    if (name && data.names.includes(name) && camera.rounds.includes(name.round)) return name.round;
    const lane = camera.rounds.findIndex((_, i) => camera.centre(i) + camera.clothPx / 2 > tapePx);
    return camera.rounds[Math.max(0, lane)];
  }

  /** The name under a place on the canvas. */
  at(px, py) {
    if (py < tapePx) return null;
    const { lane, along, off } = this.camera.laneAt(py, px);
    if (Math.abs(off) > this.data.map.cut / 2 + 2) return null;
    const slack = 6 / this.camera.scale;
    const near = this.data.within(this.camera.rounds[lane], along - slack, along + slack).filter(n => n.kind !== 'motif');
    return near.sort((a, b) => Math.abs(a.start + a.width / 2 - along) - Math.abs(b.start + b.width / 2 - along))[0] ?? null;
  }
}

function holes(g, path, c) {
  g.fillStyle = c.ink;
  for (let i = 0; i < path.count; i++) {
    if (path.action[i] === 0) g.fillRect(path.at[2 * i] - 0.04, path.at[2 * i + 1] - 0.04, 0.08, 0.08);
  }
}
