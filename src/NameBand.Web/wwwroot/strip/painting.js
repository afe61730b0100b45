// The page's side of the worker that paints: it is told once what it does not know yet, and asked for each picture once.

export class Painting {
  /** @param {(answer) => void} painted told of each picture that came. */
  constructor(painted) {
    this.painted = painted;
    this.generation = 0;
    this.asked = new Set();
    this.jobs = [];
    this.#forget();
    if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') { this.isGone = true; return; }
    try {
      this.worker = new Worker(new URL('./painter.js', import.meta.url), { type: 'module' });
    } catch {
      this.isGone = true;
      return;
    }
    this.worker.onmessage = ({ data }) => {
      if (data.generation === this.generation) painted(data); else data.picture.close();
    };
    // A worker that cannot be fetched or run: the page paints by itself again.
    this.worker.onerror = () => { this.dispose(); painted(null); };
  }

  dispose() {
    this.isGone = true;
    this.worker?.terminate();
  }

  /** Nothing that was asked for before is wanted any more. */
  anew() {
    this.generation++;
    this.asked.clear();
    this.jobs = [];
  }

  ask(data, job) {
    const key = `${job.key} ${job.isThread}`;
    if (this.asked.has(key)) return;
    this.asked.add(key);
    this.jobs.push({ ...job, generation: this.generation });
    this.data = data;
    // What one frame asks for goes over together.
    if (this.jobs.length === 1) queueMicrotask(() => this.#send());
  }

  #forget() {
    this.known = { layout: null, pieces: new Set(), shapes: new Set(), threads: new Set() };
  }

  #send() {
    const { data, jobs, known } = this, said = { generation: this.generation, jobs, pieces: [], shapes: [], threads: [] };
    this.jobs = [];
    if (this.isGone || jobs.length === 0) return;
    if (known.layout !== data.map.layout) {
      known.layout = data.map.layout;
      known.threads.clear();
      const { height, pull, thread, rounds } = data.map;
      said.map = { height, pull, thread, rounds: rounds.map(r => ({ curve: r.curve })) };
    }
    const tell = (what, number, of) => { if (!known[what].has(number)) { known[what].add(number); said[what].push([number, of]); } };
    for (const { name, isThread } of jobs) {
      const shape = data.shapes.get(name.shape);
      tell('shapes', name.shape, shape);
      for (let i = 0; i < shape.length; i += 3) tell('pieces', shape[i], data.pieces.get(shape[i]).rings);
      if (isThread) tell('threads', name.index, data.threads.get(name.index));
    }
    this.worker.postMessage(said);
  }
}
