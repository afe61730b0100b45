// The whole hem: a ring seen from above, or a line for an edge with two ends; what is on the table now stands out.

import { here } from './strip.js';
import { colours, dyed, inThread, lengthInWords, lettering, onTheme, sharpen } from './strip/colours.js';

class RingPicture {
  constructor(box, told) {
    this.box = box;
    this.told = told;
    this.canvas = box.querySelector('canvas');
    this.colours = colours();
    this.at = 0;
    this.offTheme = onTheme(() => { this.colours = colours(); this.later(); });
    this.resized = new ResizeObserver(() => { this.later(); });
    this.resized.observe(box);
    this.moved = () => this.later();
    this.follow = strip => { this.strip = strip; strip.followers.add(this.moved); this.later(); };
    if (here.strip) this.follow(here.strip); else here.waiting.add(this.follow);
    box.addEventListener('click', e => this.#press(e));
    box.addEventListener('keydown', e => this.#key(e));
  }

  dispose() {
    here.waiting.delete(this.follow);
    this.strip?.followers.delete(this.moved);
    this.offTheme();
    this.resized.disconnect();
  }

  later() {
    if (!this.frame) this.frame = requestAnimationFrame(() => { this.frame = 0; this.#draw(); });
  }

  get map() { return this.strip?.data.map; }

  #measure() {
    const rect = this.box.getBoundingClientRect();
    const size = Math.min(rect.width, rect.height);
    const rounds = this.map.rounds.length;
    const band = Math.max(4, Math.min(18, size * 0.28 / rounds));
    return { rect, rounds, band, outer: size / 2 - 22, x: rect.width / 2, y: rect.height / 2 };
  }

  /** Angle on the screen, clockwise from the lowest point, where the ends meet (centre back). */
  #angle(round, mm) {
    return (this.map.counterClockwise ? -1 : 1) * 2 * Math.PI * mm / Math.max(1, this.map.rounds[round].length) + Math.PI / 2;
  }

  #draw() {
    if (!this.map) return;
    const m = this.#measure();
    if (m.rect.width < 1) return;
    const ratio = sharpen(this.canvas, m.rect.width, m.rect.height);
    const g = this.canvas.getContext('2d');
    g.setTransform(ratio, 0, 0, ratio, 0, 0);
    g.clearRect(0, 0, m.rect.width, m.rect.height);
    const seen = new Set(this.strip.view.seen ?? []);
    const { names } = this.strip.data;
    if (this.map.closed) this.#ring(g, m, names, seen); else this.#lines(g, m, names, seen);
    this.#say(seen);
  }

  /** Where the job says its colours, names lie in their threads on a band of its cloth; what is seen on the table is told by its size. */
  #ring(g, m, names, seen) {
    const c = dyed(this.colours, this.map), isDyed = Boolean(this.map.dyes);
    g.lineWidth = isDyed ? m.band - 1 : 1;
    g.strokeStyle = isDyed ? c.cotton : c.quiet;
    for (let i = 0; i < m.rounds; i++) {
      g.beginPath();
      g.arc(m.x, m.y, m.outer - (i + 0.5) * m.band, 0, 7);
      g.stroke();
    }
    const threads = isDyed ? [...new Set(names.map(n => n.thread))] : [null];
    for (const [pass, thread] of [false, true].flatMap(p => threads.map(t => [p, t]))) {
      g.beginPath();
      for (const n of names) {
        if (seen.has(n) !== pass || (thread !== null && n.thread !== thread)) continue;
        // The lowest round is the outermost: it hangs farthest down.
        const r = m.outer - (n.round + 0.5) * m.band;
        const half = m.band * (pass ? 0.48 : 0.26);
        const a = this.#angle(n.round, n.start + n.width / 2);
        g.moveTo(m.x + Math.cos(a) * (r - half), m.y + Math.sin(a) * (r - half));
        g.lineTo(m.x + Math.cos(a) * (r + half), m.y + Math.sin(a) * (r + half));
      }
      g.strokeStyle = thread !== null ? inThread(c, thread).thread : pass ? c.seen : c.quiet;
      g.lineWidth = Math.max(1, Math.min(pass ? 5 : 4, 2 * Math.PI * m.outer * m.rounds / Math.max(1, names.length) * (pass ? 0.6 : 0.45)));
      g.stroke();
    }
    this.#pressed(g, n => {
      const a = this.#angle(n.round, n.start + n.width / 2), r = m.outer - (n.round + 0.5) * m.band;
      return [m.x + Math.cos(a) * r, m.y + Math.sin(a) * r];
    });
    g.strokeStyle = this.colours.madder;
    g.lineWidth = 2;
    g.beginPath();
    g.moveTo(m.x, m.y + m.outer - m.rounds * m.band - 3);
    g.lineTo(m.x, m.y + m.outer + 5);
    g.stroke();
    g.fillStyle = c.text;
    g.font = `13px ${lettering}`;
    g.textAlign = 'center';
    const { front, back } = this.map.rounds[0];
    const words = back === 0 ? 'centre back: the ends meet' : 'the ends meet';
    g.fillText(words, m.x, m.y + m.outer + 18);
    if (back > 0) this.#middle(g, m, back, 'back');
    if (front > 0) this.#middle(g, m, front, 'front');
    const [first, second] = this.#table();
    g.font = `14px ${lettering}`;
    g.fillText(first, m.x, m.y);
    g.font = `12px ${lettering}`;
    g.fillText(second, m.x, m.y + 18);
  }

  /** A middle of the garment, at its place on the hem. */
  #middle(g, m, mm, words) {
    const a = this.#angle(0, mm), at = r => [m.x + Math.cos(a) * r, m.y + Math.sin(a) * r];
    g.strokeStyle = this.colours.weld;
    g.lineWidth = 2;
    g.beginPath();
    g.moveTo(...at(m.outer + 1));
    g.lineTo(...at(m.outer + 7));
    g.stroke();
    const [x, y] = at(m.outer + 14);
    g.fillText(words, Math.min(m.rect.width - 22, Math.max(22, x)), y + 4);
  }

  #lines(g, m, names, seen) {
    const c = dyed(this.colours, this.map), isDyed = Boolean(this.map.dyes);
    const longest = Math.max(...this.map.rounds.map(r => r.length));
    const scale = (m.rect.width - 20) / longest;
    const pitch = Math.min(34, (m.rect.height - 40) / m.rounds);
    const y = round => 20 + (m.rounds - 1 - round) * pitch + pitch / 2;
    g.fillStyle = c.cotton;
    for (const [i, r] of isDyed ? this.map.rounds.entries() : []) g.fillRect(10, y(i) - pitch * 0.4, r.length * scale, pitch * 0.8);
    const threads = isDyed ? [...new Set(names.map(n => n.thread))] : [null];
    for (const [isSeen, thread] of [false, true].flatMap(p => threads.map(t => [p, t]))) {
      const tall = pitch * (isSeen ? 0.7 : 0.36);
      let last = null;
      g.beginPath();
      for (const n of names) {
        if (seen.has(n) !== isSeen || (thread !== null && n.thread !== thread)) continue;
        // Names that lie closer than the screen can show are one bar.
        const left = 10 + n.start * scale, right = left + Math.max(1, n.width * scale - 1);
        if (last && last.round === n.round && left < last.right) { last.right = Math.max(last.right, right); continue; }
        if (last) g.rect(last.left, y(last.round) - tall / 2, last.right - last.left, tall);
        last = { round: n.round, left, right };
      }
      if (last) g.rect(last.left, y(last.round) - tall / 2, last.right - last.left, tall);
      g.fillStyle = thread !== null ? inThread(c, thread).thread : isSeen ? c.seen : c.quiet;
      g.fill();
    }
    this.#pressed(g, n => [10 + (n.start + n.width / 2) * scale, y(n.round)]);
    g.fillStyle = c.text;
    g.font = `13px ${lettering}`;
    g.textAlign = 'center';
    g.fillText(this.#table().join(' '), m.rect.width / 2, 20 + m.rounds * pitch + 14);
    this.line = { scale, y, pitch };
  }

  #pressed(g, place) {
    const name = this.strip.view.pressed;
    if (!name) return;
    const [x, y] = place(name);
    g.strokeStyle = this.colours.madder;
    g.lineWidth = 2;
    g.beginPath();
    g.arc(x, y, 8, 0, 7);
    g.stroke();
  }

  #table() {
    const { camera, inches } = this.strip.view;
    const from = Math.max(0, camera.left), to = Math.min(camera.longest, camera.right);
    return [`${lengthInWords(from, inches)} – ${lengthInWords(to, inches)}`, 'on the table now'];
  }

  #say(seen) {
    const { names } = this.strip.data;
    const current = this.strip.view.pressed ?? names.find(n => seen.has(n)) ?? names[0];
    this.at = current?.index ?? 0;
    this.box.setAttribute('aria-valuemin', '1');
    this.box.setAttribute('aria-valuemax', String(Math.max(1, names.length)));
    this.box.setAttribute('aria-valuenow', String(Math.min(names.length, this.at + 1)));
    this.box.setAttribute('aria-valuetext', current ? `${current.text}, ${lengthInWords(current.start, this.strip.view.inches)}` : 'no names');
  }

  #press(e) {
    if (!this.map) return;
    const m = this.#measure();
    const px = e.clientX - m.rect.left, py = e.clientY - m.rect.top;
    let best = null, least = Infinity;
    for (const n of this.strip.data.names) {
      let x, y;
      if (this.map.closed) {
        const a = this.#angle(n.round, n.start + n.width / 2), r = m.outer - (n.round + 0.5) * m.band;
        [x, y] = [m.x + Math.cos(a) * r, m.y + Math.sin(a) * r];
      } else {
        [x, y] = [10 + (n.start + n.width / 2) * this.line.scale, this.line.y(n.round)];
      }
      const away = Math.hypot(x - px, y - py);
      if (away < least) { least = away; best = n; }
    }
    if (best && least < 60) this.#show(best);
  }

  #key(e) {
    const { names } = this.strip?.data ?? { names: [] };
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10, Home: -1e9, End: 1e9 }[e.key];
    if (step === undefined || names.length === 0) return;
    e.preventDefault();
    this.#show(names[Math.min(names.length - 1, Math.max(0, this.at + step))]);
  }

  #show(name) {
    this.strip.goTo(name);
    this.told.invokeMethodAsync('Pressed', name.list, name.line);
    this.later();
  }
}

export function begin(box, told) {
  return new RingPicture(box, told);
}
