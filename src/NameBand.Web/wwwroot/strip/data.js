// What lies on the table: one layout's map, and the outlines and stitches of what is seen, fetched when they are.

const unitsPerMm = 10000;
const most = 60; // names or pieces in one question
const askAgainMs = 2000;

/** The answer to a question; null where the line was cut or the server would not say. */
async function ask(url) {
  const answer = await fetch(url).catch(() => null);
  return answer?.status === 200 ? answer : null;
}

export class Data {
  constructor() {
    this.changed = () => {};
    this.map = null;
    this.names = [];
    this.pieces = new Map();   // number → Path2D at a letter height of 1 mm
    this.shapes = new Map();   // number → [piece, x, y, …]
    this.threads = new Map();  // index of the name → stitches; of this layout alone
    this.loads = new Map();    // index of the name → what they do to the cloth; of this layout alone
    this.minutes = null;       // null: still being counted
    this.asked = new Set();
    this.waiting = [];
    this.underWay = 0;
  }

  /** Puts a layout on the table, unless who asked for it is gone by then: the strip put up after it asks for itself. */
  async take(layout, isWanted) {
    const answer = await ask(`strip/${layout}/map`);
    if (!answer) return false;
    const map = await answer.json();
    if (!isWanted() || this.map && this.map.layout > map.layout) return false;
    this.#put(map);
    return true;
  }

  /** What came with the page itself. */
  takeFirst({ map, shapes, pieces }) {
    this.#put(map);
    for (const [number, shape] of Object.entries(shapes)) this.shapes.set(Number(number), shape);
    this.#putPieces(pieces);
  }

  /** Tells, once, that the first picture stands: the server may now turn to what takes longer. */
  drawn() {
    if (this.isDrawn) return;
    this.isDrawn = true;
    fetch('strip/drawn', { method: 'POST' }).catch(() => { this.isDrawn = false; });
  }

  #put(map) {
    this.map = map;
    this.minutes = null;
    this.threads.clear();
    this.loads.clear();
    this.asked.clear();
    this.waiting = [];
    const sewn = map.names.map((n, index) => ({
      index, text: n[0], round: n[1], start: n[2], width: n[3], base: n[4], ink: n[5], order: n[6],
      list: n[7], line: n[8], hooping: n[9], shape: n[10], gone: n[11] === 1, kind: n[12], onCloth: n[13], thread: n[14] ?? 0,
    }));
    this.names = sewn.filter(n => n.kind !== 'motif');
    this.byRound = map.rounds.map((_, i) => sewn.filter(n => n.round === i));
  }

  async count(layout) {
    const answer = await ask(`strip/${layout}/figures`);
    if (answer && this.map?.layout === layout) {
      this.minutes = await answer.json();
      this.changed();
    }
  }

  find(list, line) {
    return this.names.find(n => n.list === list && n.line === line) ?? null;
  }

  /** What is sewn on a round within [from, to], by halving: names, and motifs between them, stand in order. */
  within(round, from, to) {
    const names = this.byRound[round];
    let low = 0, high = names.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (names[middle].start + names[middle].width < from) low = middle + 1; else high = middle;
    }
    let end = low;
    while (end < names.length && names[end].start <= to) end++;
    return names.slice(low, end);
  }

  isDrawable(name) {
    const shape = this.shapes.get(name.shape);
    if (!shape) return false;
    for (let i = 0; i < shape.length; i += 3) if (!this.pieces.has(shape[i])) return false;
    return true;
  }

  wantShapes(names) {
    const missing = names.filter(n => !this.shapes.has(n.shape) && !this.asked.has('s' + n.shape));
    for (let i = 0; i < missing.length; i += most) {
      const part = missing.slice(i, i + most);
      part.forEach(n => this.asked.add('s' + n.shape));
      this.#fetchShapes(part, this.map.layout);
    }
  }

  wantThread(names) {
    if (!this.map.hasPaths) return;
    // What is seen now goes before what was seen a while ago.
    this.waiting = names.filter(n => !this.threads.has(n.index) && !this.asked.has('t' + n.index));
    this.#nextThread();
  }

  wantLoads(names) {
    for (const name of names) {
      if (this.loads.has(name.index) || this.asked.has('l' + name.index)) continue;
      this.asked.add('l' + name.index);
      this.#fetchLoad(name, this.map.layout);
    }
  }

  /** What was not answered is asked for again in a while, if it is still in sight then. */
  #notGot(layout, keys) {
    setTimeout(() => {
      if (this.map.layout !== layout) return;
      keys.forEach(k => this.asked.delete(k));
      this.changed();
    }, askAgainMs);
  }

  async #fetchLoad(name, layout) {
    const answer = await ask(`strip/${layout}/load/${name.index}`);
    if (this.map.layout !== layout) return;
    if (!answer) { this.#notGot(layout, ['l' + name.index]); return; }
    this.loads.set(name.index, await answer.json());
    this.changed();
  }

  async #fetchShapes(names, layout) {
    const answer = await ask(`strip/${layout}/shapes?names=${names.map(n => n.index).join(',')}`);
    if (!answer) { this.#notGot(layout, names.map(n => 's' + n.shape)); return; }
    const got = await answer.json();
    const missing = new Set();
    for (const [number, shape] of Object.entries(got)) {
      this.shapes.set(Number(number), shape);
      for (let i = 0; i < shape.length; i += 3) {
        if (!this.pieces.has(shape[i]) && !this.asked.has('p' + shape[i])) missing.add(shape[i]);
      }
    }
    const numbers = [...missing];
    numbers.forEach(n => this.asked.add('p' + n));
    for (let i = 0; i < numbers.length; i += most) await this.#fetchPieces(numbers.slice(i, i + most), layout);
    this.changed();
  }

  async #fetchPieces(numbers, layout) {
    const answer = await ask(`strip/pieces?numbers=${numbers.join(',')}`);
    if (!answer) {
      // The names that need them have to be asked for again too.
      for (const [shape, pieces] of this.shapes) if (numbers.some(n => pieces.some((p, i) => i % 3 === 0 && p === n))) this.#forgetShape(shape);
      this.#notGot(layout, numbers.map(n => 'p' + n));
      return;
    }
    this.#putPieces(await answer.json());
    this.changed();
  }

  #forgetShape(number) {
    this.shapes.delete(number);
    this.asked.delete('s' + number);
  }

  #putPieces(pieces) {
    for (const [number, rings] of Object.entries(pieces)) this.pieces.set(Number(number), pathOf(rings));
  }

  async #nextThread() {
    if (this.underWay >= 3 || this.waiting.length === 0) return;
    const name = this.waiting.shift();
    const layout = this.map.layout;
    this.asked.add('t' + name.index);
    this.underWay++;
    this.#nextThread();
    try {
      const answer = await ask(`strip/${layout}/thread/${name.index}`);
      if (answer && this.map.layout === layout) {
        this.threads.set(name.index, stitchesOf(await answer.arrayBuffer()));
        if (this.threads.size > 400) this.#forget();
        this.changed();
      } else if (!answer) {
        this.#notGot(layout, ['t' + name.index]);
      }
    } finally {
      this.underWay--;
      this.#nextThread();
    }
  }

  // The oldest go; they are asked for again when they are seen again.
  #forget() {
    for (const index of [...this.threads.keys()].slice(0, 100)) {
      this.threads.delete(index);
      this.asked.delete('t' + index);
    }
  }
}

/** A piece as a path, with the middle of its own ink; and its rings, for whoever paints it elsewhere. */
export function pathOf(rings) {
  const path = new Path2D();
  let left = Infinity, right = -Infinity;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      left = Math.min(left, ring[i] / unitsPerMm);
      right = Math.max(right, ring[i] / unitsPerMm);
      if (i === 0) path.moveTo(ring[0] / unitsPerMm, ring[1] / unitsPerMm);
      else path.lineTo(ring[i] / unitsPerMm, ring[i + 1] / unitsPerMm);
    }
    path.closePath();
  }
  path.middle = left < right ? (left + right) / 2 : 0;
  path.rings = rings;
  return path;
}

/** Where a place of a finished round is read on the ruler of its cloth: from the cut left end of the piece it lies on. */
export function onCloth(map, round, mm) {
  const rulers = map.rounds[round].rulers;
  const ruler = rulers.findLast(r => r.start <= mm + 0.01) ?? rulers[0];
  return { cloth: ruler.cloth, mm: ruler.onCloth + (mm - ruler.start) / (1 - map.shortening) };
}

/** Steps of a needle path: x and y in mm, kinds and actions as bytes. */
export function stitchesOf(buffer) {
  const count = new DataView(buffer).getInt32(0, true);
  const bytes = new Uint8Array(buffer, 4 + 8 * count, count);
  return { count, at: new Float32Array(buffer.slice(4, 4 + 8 * count)), kind: bytes.map(b => b & 15), action: bytes.map(b => b >> 4) };
}

/** A name's letters, each at its place; where `stand` is given it turns each about the middle of its own ink, as on a curved strip. */
export function shapeInto(g, data, name, stand) {
  const shape = data.shapes.get(name.shape);
  for (let i = 0; i < shape.length; i += 3) {
    const x = shape[i + 1] / unitsPerMm, y = shape[i + 2] / unitsPerMm;
    const piece = data.pieces.get(shape[i]);
    g.save();
    if (stand) stand(g, x, y, piece.middle); else g.translate(x, y);
    g.fill(piece);
    g.restore();
  }
}
