// The strip on the table: put together what is fetched, drawn, said and pressed.

import { t } from './said.js';
import { isStill } from './strip/colours.js';
import { Data } from './strip/data.js';
import { View } from './strip/view.js';
import { hands, only, showWhole, zoomBy } from './strip/hands.js';
import { Finder, SeenList, facts } from './strip/words.js';
import { Playback } from './strip/playback.js';

/** The strip of this tab, for the garment beside it; and what was fetched and where one was, for when it is put up again. */
export const here = { strip: null, waiting: new Set(), data: null, camera: null };

/** Where one is on the strip stands in the address, so that a reload and the browser's *back* bring it again. */
const placeKey = 'at';
const noteAfterMs = 400;

function placeInAddress() {
  const [left, up, scale, only] = (new URL(location.href).searchParams.get(placeKey) ?? '').split('_').map(Number);
  return [left, up, scale, only].every(Number.isFinite) && scale > 0 ? { left, up, scale, only } : null;
}

const placeInWords = ({ left, up, scale, only }) => [left, up, scale, only].map(n => String(Math.round(n * 1000) / 1000)).join('_');

class Strip {
  constructor(root) {
    const part = name => root.querySelector(`[data-part="${name}"]`);
    this.root = root;
    this.box = part('table');
    this.data = here.data ??= new Data();
    this.data.changed = () => this.view.changed();
    this.view = new View(part('canvas'), this.box, this.data, () => this.#moved());
    this.says = part('says');
    this.facts = part('facts');
    this.laying = part('laying');
    this.seen = new SeenList(part('seen'), this.says, this.view, n => this.press(n));
    this.finder = new Finder(part('find'), part('found'), this.says, this.view, n => this.goTo(n));
    this.playback = new Playback(part('playback'));
    this.round = part('round');
    hands(this.box, this.view, n => this.press(n), (name, place) => this.#drop(name, place));
    part('closer').addEventListener('click', () => zoomBy(this.view, 1.6));
    part('farther').addEventListener('click', () => zoomBy(this.view, 1 / 1.6));
    part('whole').addEventListener('click', () => showWhole(this.view));
    this.stitches = part('stitches');
    this.load = part('load');
    this.stitches.addEventListener('click', () => zoomBy(this.view, 40 / this.view.camera.scale));
    this.round.addEventListener('change', () => only(this.view, Number(this.round.value)));
    this.unit = part('unit');
    this.unit.addEventListener('change', () => { this.view.inches = this.unit.value === 'in'; this.#again(); });
    part('load').addEventListener('change', e => {
      this.view.showLoad = e.target.checked;
      part('legend').hidden = !e.target.checked;
      if (e.target.checked && this.view.camera.scale < 3) zoomBy(this.view, 4 / this.view.camera.scale);
      this.view.changed();
    });
    this.followers = new Set();
    this.back = () => { const place = placeInAddress(); if (place && !this.view.isNew) this.view.go(place, true); };
    addEventListener('popstate', this.back);
    here.strip = this;
    here.waiting.forEach(f => f(this));
    const first = part('first');
    if (first && !this.data.map) this.data.takeFirst(JSON.parse(first.textContent));
    this.laying.hidden = Boolean(this.data.map);
    if (this.data.map) this.#show(!here.camera);
  }

  /** Puts what the data hold on the table. */
  #show(isFirst) {
    const { map } = this.data;
    const place = isFirst && !here.camera && placeInAddress();
    if (here.camera) {
      this.view.resume(here.camera);
      here.camera = null;
    } else if (place) {
      const { width, height } = this.box.getBoundingClientRect();
      this.view.resume({ ...place, inches: map.inches, width, height, isMoved: true });
    } else if (isFirst) {
      this.view.inches = map.inches;
    }
    this.unit.value = this.view.inches ? 'in' : 'cm';
    this.#rounds(map);
    this.stitches.hidden = !map.hasPaths;
    this.load.closest('label').hidden = !map.hasPaths;
    this.view.pointed = null;
    this.view.take(map);
    this.playback.take(map);
    this.#again();
  }

  async update(state) {
    // The page knows nothing of the place: the address that it opened something by may have lost it.
    this.#noteLater();
    this.laying.hidden = !state.laying;
    this.root.toggleAttribute('data-laying', state.laying);
    if (state.laying && this.data.minutes) {
      // Minutes of before the change are never shown as those of after it.
      this.data.minutes = null;
      this.#again();
    }
    if (state.layout > 0 && state.hasPlan && this.data.map?.layout !== state.layout) {
      // Something else may have changed while it is on its way: it is waited for, and not asked for again.
      if (this.coming?.layout !== state.layout) this.coming = { layout: state.layout, isTaken: this.#take(state.layout) };
      if (!await this.coming.isTaken) return;
    }
    if (state.counted && !this.data.minutes && this.data.map?.layout === state.layout) {
      await this.data.count(state.layout);
      this.#again();
    }
    if (state.list && (this.shown !== `${state.list}/${state.line}/${state.asked}`)) {
      const name = this.data.find(state.list, state.line);
      if (name) {
        this.shown = `${state.list}/${state.line}/${state.asked}`;
        this.goTo(name);
        // It was pressed elsewhere on the page: the strip comes to it, and into sight.
        this.box.scrollIntoView({ block: 'nearest', behavior: isStill() ? 'auto' : 'smooth' });
      }
    }
  }

  async #take(layout) {
    const isFirst = !this.data.map;
    const isTaken = await this.data.take(layout, () => !this.isGone);
    if (this.coming?.layout === layout) this.coming = null;
    if (!isTaken) return false;
    const { pressed } = this.view; // by now: another may have been pressed while the answer came
    this.view.pressed = pressed && this.data.find(pressed.list, pressed.line);
    this.#show(isFirst);
    return true;
  }

  /** Who is told which name is pressed. */
  hear(hearer) {
    this.hearer = hearer;
    this.#tell(this.view.pressed);
  }

  #tell(name) {
    const isRow = name && name.kind !== 'heading';
    const row = isRow ? `${name.list}/${name.line}` : '';
    if (!this.hearer || row === this.told) return;
    this.told = row;
    this.hearer.invokeMethodAsync('PressedAsync', isRow ? name.list : null, isRow ? name.line : 0).catch(() => { this.told = undefined; });
  }

  #drop(name, place) {
    this.hearer?.invokeMethodAsync('DroppedAsync', name.list, name.line, place.other, place.isAfter, place.round).catch(() => { });
  }

  /** Shows the letters at another height, each name in its place, until they are laid out anew; null: as laid out. */
  preview(heightMm) {
    this.view.preview = heightMm;
    this.view.changed();
  }

  goTo(name) {
    this.view.pressed = name;
    this.#tell(name);
    const camera = this.view.camera;
    const fits = Math.min(camera.width * 0.7 / name.width, 12);
    const isClose = camera.scale * this.data.map.height > 14 && name.width * camera.scale < camera.width;
    this.view.go(camera.toName(name, isClose ? camera.scale : fits));
    this.#facts();
  }

  press(name) {
    this.view.pressed = name;
    this.#tell(name);
    this.view.changed();
    this.#facts();
  }

  #facts() {
    facts(this.facts, this.view.pressed, this.view, () => { this.press(null); this.box.focus(); }, n => this.playback.open(n));
  }

  #again() {
    this.view.changed();
    this.#facts();
  }

  #rounds(map) {
    const label = this.round.closest('label');
    label.hidden = map.rounds.length < 2;
    const options = [['-1', t('all rounds')], ...map.rounds.map((r, i) => [String(i), t('round {0}', r.number)])];
    this.round.replaceChildren(...options.map(([value, text]) => new Option(text, value)));
    this.round.value = String(this.view.camera.only < map.rounds.length ? this.view.camera.only : -1);
  }

  #moved() {
    if (Number(this.round.value) !== this.view.camera.only) this.round.value = String(this.view.camera.only);
    this.seen.later();
    this.#noteLater();
    this.followers.forEach(f => f(this));
  }

  #noteLater() {
    clearTimeout(this.noting);
    this.noting = setTimeout(() => this.#note(), noteAfterMs);
  }

  /** Nothing is noted until one has gone somewhere. */
  #note() {
    const place = this.view.kept();
    if (!place?.isMoved || this.isGone) return;
    const words = placeInWords(place), url = new URL(location.href);
    if (words === url.searchParams.get(placeKey)) return;
    url.searchParams.set(placeKey, words);
    history.replaceState(history.state, '', url);
  }

  dispose() {
    // Both the element that goes and the page that made it say so.
    if (this.isGone) return;
    this.isGone = true;
    clearTimeout(this.noting);
    removeEventListener('popstate', this.back);
    this.view.dispose();
    this.seen.dispose();
    this.finder.dispose();
    this.playback.dispose();
    if (here.strip === this) here.strip = null;
    here.camera = this.view.kept();
    delete this.root.strip;
  }
}

export function begin(root) {
  return root.strip ??= new Strip(root);
}

/** The strip begins as soon as it stands on the page, and does not wait until the page lives. */
customElements.define('name-strip', class extends HTMLElement {
  connectedCallback() { queueMicrotask(() => { if (this.isConnected) begin(this); }); }
  disconnectedCallback() { this.strip?.dispose(); }
});
