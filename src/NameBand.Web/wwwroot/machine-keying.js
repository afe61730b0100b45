// A machine's own letters: what to key in, one piece after the other, where it starts and how long it must come out.

import { el } from './machine.js';

const shown = text => text.replaceAll(' ', '␣');

/** Signs that many faces draw alike, told in words where two could be taken for each other: the face is that of her device. */
const ALIKE = [['1', 'one'], ['I', 'large i'], ['l', 'small L'], ['0', 'zero'], ['O', 'large o']];
const alike = text => ALIKE
  .filter(([sign]) => text.includes(sign) && (sign === 'l' ? /[1I]/.test(text) : sign !== 'O' || text.includes('0')))
  .map(([sign, words]) => `${sign} is ${words}`).join(', ');
const mm = value => `${value} mm`;

export class Keying {
  constructor() {
    this.box = el('section', null, { data: 'keying', className: 'keying', hidden: true });
    this.box.setAttribute('aria-label', 'What to key in');
    this.name = el('p', null, { className: 'keying-name' });
    this.keys = el('p', null, { className: 'keying-keys', data: 'keys' });
    this.alike = el('p', null, { className: 'keying-alike' });
    this.facts = el('dl', null, { className: 'keying-facts' });
    this.then = el('p', null, { className: 'keying-then' });
    this.box.append(this.name, this.keys, this.alike, this.facts, this.then);
    this.at = -1;
    this.all = [];
  }

  take(keys) {
    this.all = keys ?? [];
  }

  get key() { return this.all?.[this.at]; }

  get heading() { return `${this.at + 1} of ${this.all.length}, round ${this.key.round}${this.key.sewn ? ': sewn ✓' : this.key.again ? ': to be sewn again' : ''}`; }

  option(i) {
    const k = this.all[i];
    return `${k.order} ${k.name}${k.part && `, ${k.part}`}${k.sewn ? ' ✓ sewn' : k.again ? ' again' : ''}`;
  }

  write(state) {
    const key = this.key;
    this.name.replaceChildren(el('span', String(key.order), { className: 'number' }), ' ', el('bdi', key.name), key.part ? ` (${key.part})` : '');
    this.keys.hidden = !key.keyed;
    if (key.keyed) this.keys.replaceChildren(el('span', 'key in ', { className: 'number' }), el('bdi', shown(key.keyed)));
    this.alike.textContent = key.keyed ? alike(key.keyed) : '';
    this.alike.hidden = this.alike.textContent === '';
    const time = s => s < 60 ? `${s} s` : `${Math.floor(s / 60)}:${String(s % 60).padStart(2, '0')} min`;
    const seconds = key.seconds === undefined ? key.minutes === undefined ? '' : `${key.minutes} min` : time(key.seconds);
    const where = state.laying ? 'one moment' : `${key.onCloth.toFixed(1)} mm`;
    const facts = [
      [`start mark, from the cut left end of ${state.cloths > 1 ? `cloth ${key.cloth}` : 'the cloth'}`, where],
      ['from where the last one ended', key.fromLast === undefined || state.laying ? '' : mm(key.fromLast)],
      [key.keyed ? 'must come out at' : 'is long', `${key.estimated ? '~ ' : ''}${mm(key.length)}`],
      ['no less, no more', key.least === undefined ? '' : `${key.least} to ${mm(key.most)}`], ['takes', seconds],
    ].filter(([, how]) => how);
    this.facts.replaceChildren(...facts.map(([what, how]) => {
      const pair = el('div');
      pair.append(el('dt', what), el('dd', how));
      return pair;
    }));
    const next = this.all[this.at + 1];
    this.then.replaceChildren(...(next ? ['then ', el('span', String(next.order), { className: 'number' }), ' ', el('bdi', next.name), next.part ? `, ${next.part}` : '', next.round === key.round ? '' : `, on round ${next.round}`] : ['This is the last one.']));
  }
}
