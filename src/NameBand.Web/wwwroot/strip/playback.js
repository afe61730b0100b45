// Plays a hooping's needle path back: any speed, and a slider over its steps.

import { t } from '../said.js';
import { HoopPicture, fetchHooping } from './hoop.js';

export class Playback {
  constructor(box) {
    const part = name => box.querySelector(`[data-part="${name}"]`);
    this.box = box;
    this.choice = part('hooping');
    this.play = part('play');
    this.speed = part('speed');
    this.speedSays = part('speed-says');
    this.at = part('at');
    this.atSays = part('at-says');
    this.picture = new HoopPicture(part('hoop'), false);
    this.step = 0;
    this.playing = false;
    this.choice.addEventListener('change', () => this.#load());
    this.play.addEventListener('click', () => this.#toggle());
    this.speed.addEventListener('input', () => this.#say());
    this.at.addEventListener('input', () => { this.#stop(); this.#to(Number(this.at.value)); });
    box.addEventListener('toggle', () => { if (box.open) this.#load(); else this.#stop(); });
    box.addEventListener('keydown', e => { if (e.key === 'Escape') this.#stop(); });
    this.#say();
  }

  dispose() {
    this.#stop();
    this.picture.dispose();
  }

  take(map) {
    this.#stop();
    this.map = map;
    this.box.hidden = !map.hasPaths;
    this.picture.inches = map.inches;
    const was = this.choice.value;
    this.choice.replaceChildren(...map.hoopings.map(h => new Option(`${h.number}${h.sewn ? ` ${t('✓ sewn')}` : ''}`, String(h.number))));
    if (map.hoopings.some(h => String(h.number) === was)) this.choice.value = was;
    this.loaded = null;
    if (this.box.open) this.#load();
  }

  open(number) {
    this.choice.value = String(number);
    if (this.box.open) this.#load(); else this.box.open = true;
    this.box.scrollIntoView({ block: 'nearest' });
    this.play.focus();
  }

  /** Stitches a second, from single ones to a whole hooping in a moment. */
  get perSecond() { return Math.round(2 * Math.pow(2500, Number(this.speed.value) / 100)); }

  async #load() {
    const key = `${this.map.layout}/${this.choice.value}`;
    if (!this.choice.value || this.loaded === key) return;
    this.#stop();
    this.loaded = key;
    this.hooping = null;
    const hooping = await fetchHooping(this.map.layout, Number(this.choice.value)).catch(() => null); // The line was cut.
    if (this.loaded !== key) return;
    if (!hooping?.path) {
      this.loaded = null;
      this.atSays.textContent = t('it could not be fetched: choose it again');
      return;
    }
    this.hooping = hooping;
    this.at.max = String(hooping.path.count);
    this.picture.take(hooping, hooping.path.count);
    this.#to(hooping.path.count);
  }

  #toggle() {
    if (this.playing) { this.#stop(); return; }
    if (!this.hooping) return;
    if (this.step >= this.hooping.path.count) this.#to(0);
    this.playing = true;
    this.play.textContent = t('Pause');
    this.then = performance.now();
    this.part = 0;
    this.frame = requestAnimationFrame(t => this.#tick(t));
  }

  #stop() {
    this.playing = false;
    this.play.textContent = t('Play');
    cancelAnimationFrame(this.frame);
  }

  #tick(time) {
    if (!this.playing) return;
    this.part += Math.max(0, time - this.then) / 1000 * this.perSecond;
    this.then = time;
    const whole = Math.floor(this.part);
    this.part -= whole;
    this.#to(Math.min(this.hooping.path.count, this.step + whole));
    if (this.step >= this.hooping.path.count) this.#stop();
    else this.frame = requestAnimationFrame(t => this.#tick(t));
  }

  #to(step) {
    if (!this.hooping) return;
    this.step = step;
    this.at.value = String(step);
    const place = t('{0} of {1}', step, this.hooping.path.count), does = doing(this.hooping.path, step);
    const words = does ? `${place}: ${does}` : place;
    this.atSays.textContent = words;
    this.at.setAttribute('aria-valuetext', words);
    this.picture.sewTo(step);
  }

  #say() {
    this.speedSays.textContent = t('{0} stitches a second', this.perSecond);
    this.speed.setAttribute('aria-valuetext', this.speedSays.textContent);
  }
}

const actions = ['', t('jump'), t('trim'), t('stop, change the thread'), t('end')];
const kinds = ['', t('alignment mark'), t('lock stitch'), t('underlay'), t('travel'), t('satin'), t('running stitch')];

function doing(path, step) {
  if (step < 1) return '';
  return path.action[step - 1] === 0 ? kinds[path.kind[step - 1]] ?? '' : actions[path.action[step - 1]] ?? '';
}
