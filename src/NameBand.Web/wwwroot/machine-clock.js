// A clock to take the minutes at the machine from.

import { el } from './machine.js';
import { t } from './said.js';

const keptAs = 'clock';

/** The clock of this tab as it was kept: of what it runs, since when, and what ran before. */
function kept() {
  try {
    return JSON.parse(sessionStorage.getItem(keptAs)) ?? {};
  } catch {
    return {};
  }
}

/** It goes on over a reload of the page, for what it was started for. */
export class Clock {
  /** @param ticked told every second and at every press. */
  constructor(ticked = () => {}) {
    Object.assign(this, { started: 0, spent: 0, ticked });
    this.button = el('button', t('Start the clock'), { type: 'button', data: 'clock' });
    this.says = el('span', '', { data: 'clock-says', className: 'clock' });
    this.button.addEventListener('click', () => this.press());
    this.timer = setInterval(() => this.tick(), 1000);
  }

  /** What its minutes are of: that of another thing is not shown, and is not lost either. */
  of(what) {
    if (this.what === what) return;
    this.what = what;
    const { of, started, spent } = kept();
    if (of === what) Object.assign(this, { started: Number(started) || 0, spent: Number(spent) || 0 });
  }

  #keep() {
    if (!this.what) return;
    if (this.started || this.spent) sessionStorage.setItem(keptAs, JSON.stringify({ of: this.what, started: this.started, spent: this.spent }));
    else if (kept().of === this.what) sessionStorage.removeItem(keptAs);
  }

  dispose() { clearInterval(this.timer); }

  get ms() { return this.spent + (this.started ? Date.now() - this.started : 0); }

  /** Minutes with one decimal; empty where it ran too short to say. */
  get minutes() { return this.ms >= 30000 ? String(Math.round(this.ms / 6000) / 10) : ''; }

  press() {
    if (this.started) this.stop();
    else this.started = Date.now();
    this.#keep();
    this.tick();
  }

  stop() {
    if (!this.started) return;
    this.spent += Date.now() - this.started;
    this.started = 0;
    this.#keep();
  }

  reset() {
    this.started = this.spent = 0;
    this.#keep();
    this.what = '';
    this.tick();
  }

  hide(isHidden) {
    this.button.hidden = this.says.hidden = isHidden;
  }

  tick() {
    this.button.textContent = this.started ? t('Stop the clock') : this.spent ? t('Go on with the clock') : t('Start the clock');
    const seconds = Math.floor(this.ms / 1000);
    this.says.textContent = this.ms ? `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}` : '';
    this.ticked();
  }
}

/** A button that leads on to the next one: the second half of a double press, or a key held down, is not meant for that one. */
export function once(button) {
  button.addEventListener('click', e => { if (e.detail > 1) e.preventDefault(); });
  button.addEventListener('keydown', e => { if (e.repeat) e.preventDefault(); });
  return button;
}

/** Says something to the sewing log. */
export async function tell(word) {
  try {
    const answer = await fetch('/machine/said', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(word) });
    return answer.ok ? await answer.json() : { written: false, problems: [t('It was not logged ({0}).', answer.status)] };
  } catch {
    return { written: false, problems: [t('It was not logged: the worktable does not answer. Try again.')] };
  }
}
