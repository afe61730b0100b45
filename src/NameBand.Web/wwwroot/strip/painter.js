// The worker that paints names: outlines and thread into pictures of columns, while the page answers to hands.

import { pathOf } from './data.js';
import { paintColumn } from './tiles.js';

const data = { map: null, shapes: new Map(), pieces: new Map(), threads: new Map() };
const next = new MessageChannel();
let waiting = [], generation = -1, isBusy = false;

next.port1.onmessage = () => {
  isBusy = false;
  paint();
};

/** One picture at a time, so that what is no longer wanted is heard of in between. */
function paint() {
  const job = isBusy ? null : waiting.shift();
  if (!job) return;
  isBusy = true;
  const canvas = new OffscreenCanvas(job.width, job.height);
  paintColumn(canvas.getContext('2d'), data, job, job.isThread ? data.threads.get(job.name.index) : null);
  const picture = canvas.transferToImageBitmap();
  postMessage({ key: job.key, generation: job.generation, isThread: job.isThread, picture }, [picture]);
  next.port2.postMessage(0);
}

onmessage = ({ data: said }) => {
  if (said.map) {
    data.map = said.map;
    data.threads.clear();
  }
  for (const [number, rings] of said.pieces ?? []) data.pieces.set(number, pathOf(rings));
  for (const [number, shape] of said.shapes ?? []) data.shapes.set(number, shape);
  for (const [index, thread] of said.threads ?? []) data.threads.set(index, thread);
  if (said.generation !== generation) {
    generation = said.generation;
    waiting = [];
  }
  waiting.push(...said.jobs ?? []);
  paint();
};
