// Hands on the garment: it is turned, tilted and brought closer by mouse, fingers and keys.

import { isStill } from '../strip/colours.js';

const tapPx = 6;

export class Turning {
  constructor(box, look, { press, changed, enter, step }) {
    Object.assign(this, { box, look, press, changed, enter, step, down: new Map() });
    box.addEventListener('pointerdown', e => this.#begin(e));
    box.addEventListener('pointermove', e => this.#move(e));
    for (const end of ['pointerup', 'pointercancel']) box.addEventListener(end, e => this.#end(e));
    box.addEventListener('wheel', e => this.#wheel(e), { passive: false });
    box.addEventListener('keydown', e => this.#key(e));
  }

  turn(by) { this.#glide({ angle: by }); }
  zoom(times) { this.#glide({ times }); }

  #begin(e) {
    if (e.button !== 0) return;
    this.down.set(e.pointerId, { x: e.clientX, y: e.clientY });
    this.moved = this.down.size > 1 ? Infinity : 0;
    this.box.setPointerCapture(e.pointerId);
    cancelAnimationFrame(this.gliding);
  }

  #move(e) {
    const was = this.down.get(e.pointerId), look = this.look();
    if (!was || !look?.turn) return;
    const others = [...this.down].filter(([id]) => id !== e.pointerId).map(([, p]) => p);
    const now = { x: e.clientX, y: e.clientY };
    if (others.length > 0) {
      const span = p => Math.hypot(p.x - others[0].x, p.y - others[0].y);
      look.zoom(span(now) / Math.max(1, span(was)));
    } else {
      this.moved += Math.abs(now.x - was.x) + Math.abs(now.y - was.y);
      // A tap that shakes a little is a tap.
      if (this.moved > tapPx) look.turn((now.x - was.x) * look.perPx, e.pointerType === 'mouse' ? (now.y - was.y) * 0.005 : 0);
    }
    this.down.set(e.pointerId, now);
    this.changed();
  }

  #end(e) {
    const was = this.down.get(e.pointerId);
    if (!this.down.delete(e.pointerId)) return;
    if (e.type === 'pointerup' && was && this.moved <= tapPx) this.press(e.clientX, e.clientY);
  }

  /** Until it was pressed the wheel moves the page. */
  #wheel(e) {
    if (document.activeElement !== this.box || !this.look()?.turn) return;
    e.preventDefault();
    this.look().zoom(Math.exp(-e.deltaY * 0.0015));
    this.changed();
  }

  #key(e) {
    if (e.target !== this.box || e.ctrlKey || e.metaKey || e.altKey) return;
    const quarter = 0.2;
    const work = {
      ArrowLeft: () => this.#glide({ angle: -quarter }), ArrowRight: () => this.#glide({ angle: quarter }),
      ArrowUp: () => this.#glide({ tilt: 0.1 }), ArrowDown: () => this.#glide({ tilt: -0.1 }),
      '+': () => this.zoom(1.3), '=': () => this.zoom(1.3), '-': () => this.zoom(1 / 1.3),
      Home: () => this.#to(0), End: () => this.#to(Math.PI),
      PageDown: () => this.step(1), PageUp: () => this.step(-1), Enter: () => this.enter(),
    }[e.key];
    if (!work) return;
    e.preventDefault();
    work();
  }

  #to(angle) {
    this.look()?.faceAngle?.(angle);
    this.changed();
  }

  /** A little way in a quarter of a second; at once for those who asked for less motion. */
  #glide({ angle = 0, tilt = 0, times = 1 }) {
    const whole = isStill() ? 0 : 240, begun = performance.now();
    let done = 0;
    cancelAnimationFrame(this.gliding);
    const step = time => {
      const part = whole === 0 ? 1 : Math.min(1, Math.max(0, (time - begun) / whole)), eased = part * (2 - part), by = eased - done;
      done = eased;
      const look = this.look();
      if (!look?.turn) return;
      look.turn(angle * by, tilt * by);
      look.zoom(times ** by);
      this.changed();
      if (part < 1) this.gliding = requestAnimationFrame(step);
    };
    step(begun);
  }
}
