// The garment as it hangs: turned by hand, its names pressed; a flat drawing where the browser cannot draw in depth.

import { many, t } from './said.js';
import { here } from './strip.js';
import { colours, isStill, onTheme } from './strip/colours.js';
import { Turning } from './garment/turning.js';
import { rounds } from './garment/listed.js';

const askAgainMs = 2000;
const fileName = 'garment.png';

/** Whether the browser draws in depth; asked once, since asking makes something. */
let canDraw;
function drawsInDepth() {
  if (canDraw === undefined) {
    const context = document.createElement('canvas').getContext('webgl2');
    canDraw = Boolean(context);
    context?.getExtension('WEBGL_lose_context')?.loseContext();
  }
  return canDraw;
}

class Garment {
  constructor(root, told) {
    this.part = name => root.querySelector(`[data-part="${name}"]`);
    root.garment = this;
    Object.assign(this, { root, told, box: this.part('hangs'), layout: 0, look: null, isInside: false });
    this.moved = () => this.#follow();
    this.follow = strip => { this.strip = strip; strip.followers.add(this.moved); this.#follow(); };
    if (here.strip) this.follow(here.strip); else here.waiting.add(this.follow);
    this.turning = new Turning(this.box, () => this.look, {
      press: (x, y) => this.#pressAt(x, y), changed: () => this.look?.draw(), enter: () => this.#pressFront(), step: by => this.#step(by),
    });
    this.offTheme = onTheme(() => this.#hang());
    // What nobody looks at is not fetched and not drawn.
    this.inSight = new IntersectionObserver(seen => { this.isInSight = seen.at(-1).isIntersecting; this.#follow(); });
    this.inSight.observe(this.box);
    this.resized = new ResizeObserver(() => this.look?.resize());
    this.resized.observe(this.box);
    // A graphics card that gives up: what is drawn flat needs none.
    this.part('canvas').addEventListener('webglcontextlost', () => { canDraw = false; this.#hang(); });
    this.#tools();
  }

  dispose() {
    this.isGone = true;
    here.waiting.delete(this.follow);
    this.strip?.followers.delete(this.moved);
    this.offTheme();
    this.inSight.disconnect();
    this.resized.disconnect();
    clearTimeout(this.again);
    this.#small();
    this.look?.dispose(true);
  }

  #tools() {
    const press = (part, work) => this.part(part).addEventListener('click', work);
    press('left', () => this.turning.turn(-0.5));
    press('right', () => this.turning.turn(0.5));
    press('closer', () => this.turning.zoom(1.5));
    press('farther', () => this.turning.zoom(1 / 1.5));
    press('inside', () => this.#turnOut(!this.isInside));
    press('large', () => { if (this.isLarge) this.#small(); else this.#large(); });
    press('save', () => this.#save());
    this.root.addEventListener('keydown', e => { if (e.key === 'Escape' && this.isLarge) { this.#small(); this.part('large').focus(); } });
    // Who goes on to what lies behind it has done with it.
    this.root.addEventListener('focusout', e => { if (e.relatedTarget && !this.root.contains(e.relatedTarget)) this.#small(); });
    this.part('listed').addEventListener('toggle', () => this.#list());
  }

  get data() { return this.strip?.data; }

  /** What hangs, where it is of what is laid now: names are looked for on no other. */
  get current() { return this.look && this.hung === this.data.map ? this.look : null; }

  /** The strip has changed, or moved. */
  #follow() {
    if (!this.isInSight || !this.data?.map || this.isGone) return;
    if (this.data.map.layout !== this.layout) { this.layout = this.data.map.layout; this.#hang(); return; }
    const { pressed } = this.strip.view;
    if (pressed !== this.pressed) {
      this.pressed = pressed;
      if (pressed && this.own !== pressed) this.look?.face(pressed);
      this.own = null;
      this.look?.mark(pressed);
      this.#say();
    }
  }

  async #hang() {
    const { layout } = this;
    if (!layout || this.isGone) return;
    const inDepth = drawsInDepth();
    const found = await this.#fetch(layout, inDepth).catch(() => null);
    // The strip may have gone on while nobody looked here: what came is of other rounds then.
    if (this.isGone || layout !== this.layout || layout !== this.data.map.layout) return;
    if (!found) {
      clearTimeout(this.again);
      this.again = setTimeout(() => this.#hang(), askAgainMs);
      return;
    }
    const { got, Hanging } = found;
    const kept = this.look?.kept;
    this.hung = this.data.map;
    this.look?.dispose();
    this.part('canvas').hidden = !inDepth;
    this.part('flat').hidden = inDepth;
    this.look = new Hanging(this.part(inDepth ? 'canvas' : 'flat'), got, this.data, colours(), kept, () => this.#tag());
    for (const part of ['left', 'right', 'closer', 'farther', 'inside']) this.part(part).hidden = !inDepth;
    this.part('inside').textContent = this.look.otherSide ?? '';
    if (!kept) this.isInside = !this.look.isOutside;
    this.#turnOut(this.isInside);
    this.part('waits').hidden = true;
    this.box.setAttribute('aria-label', t('The garment. {0}', this.look.says));
    this.box.dataset.hung = String(layout);
    this.look.mark(this.pressed = this.strip.view.pressed);
    this.#list();
    this.#say();
  }

  /** What is drawn, and what draws it; null where the server would not say. */
  async #fetch(layout, inDepth) {
    const answer = await fetch(`strip/${layout}/garment${inDepth ? '' : '/flat'}`);
    if (answer.status !== 200) return null;
    const { Hanging } = await import(inDepth ? './garment/hanging.js' : './garment/flat.js');
    return { got: inDepth ? await answer.json() : await answer.text(), Hanging };
  }

  #turnOut(isInside) {
    this.isInside = isInside;
    this.part('inside').setAttribute('aria-pressed', String(isInside));
    this.look?.show(isInside);
  }

  #say() {
    if (!this.look) return;
    const { map } = this.data, names = this.data.names.filter(n => n.kind === 'name' && !n.gone);
    const sewn = names.filter(n => this.look.sewn.has(n.index)).length;
    const count = many(names.length, '{1} of {0} name sewn', '{1} of {0} names sewn', sewn);
    const name = this.strip.view.pressed;
    this.part('says').textContent = name ? t('{0}. {1}: round {2}', count, name.text, map.rounds[name.round].number) : count;
  }

  /** The pressed name in the page's own letters, above its place. */
  #tag() {
    const tag = this.part('tag'), name = this.strip?.view.pressed, at = name && this.current?.spot(name);
    tag.hidden = !at;
    if (!at) return;
    if (tag.textContent !== name.text) tag.textContent = name.text;
    const half = tag.offsetWidth / 2, { width } = this.box.getBoundingClientRect();
    tag.style.left = `${Math.max(half + 4, Math.min(width - half - 4, at.x))}px`;
    tag.style.top = `${Math.max(34, at.y)}px`;
  }

  #pressAt(x, y) {
    const name = this.current?.at(x, y);
    if (name) this.#press(name);
  }

  #pressFront() {
    const name = this.data?.names.includes(this.strip.view.pressed) ? this.strip.view.pressed : this.current?.inFront();
    if (name) this.#press(name);
  }

  /** Brings the strip to a name, and into sight. */
  #press(name) {
    this.#small();
    this.own = name;
    this.strip.goTo(name);
    this.strip.box.scrollIntoView({ block: 'nearest', behavior: isStill() ? 'auto' : 'smooth' });
    this.told.invokeMethodAsync('Pressed', name.list, name.line).catch(() => { });
  }

  /** From name to name, in the order of the rounds; the garment turns so that it is in front. */
  #step(by) {
    const { names } = this.data ?? { names: [] };
    if (!this.current || names.length === 0) return;
    const now = names.indexOf(this.strip.view.pressed ?? this.look.inFront());
    const next = names[Math.max(0, Math.min(names.length - 1, now + by))];
    this.strip.goTo(next);
  }

  #list() {
    if (this.part('listed').open && this.data?.map) rounds(this.part('rounds'), this.data, this.look?.sewn ?? new Set(), n => this.#press(n));
  }

  get isLarge() { return this.root.classList.contains('large'); }

  /** Over the whole window, before all else. */
  #large() {
    this.root.classList.add('large');
    this.root.popover = 'manual';
    this.root.showPopover();
    this.part('large').setAttribute('aria-pressed', 'true');
    this.box.focus();
  }

  #small() {
    if (!this.isLarge) return;
    this.root.classList.remove('large');
    this.root.popover = null;
    this.part('large').setAttribute('aria-pressed', 'false');
  }

  async #save() {
    const blob = await this.look?.picture();
    if (!blob) return;
    const link = document.createElement('a');
    link.href = URL.createObjectURL(blob);
    link.download = fileName;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  }
}

export function begin(root, told) {
  return new Garment(root, told);
}
