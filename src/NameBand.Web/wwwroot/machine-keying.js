// A machine's own letters: what to key in, one piece after the other, where it starts and how long it must come out.

import { el } from './machine.js';
import { number, parts, t } from './said.js';

const shown = text => text.replaceAll(' ', '␣');

/** Signs that many faces draw alike, told in words where two could be taken for each other: the face is that of her device. */
const ALIKE = [['1', t('one')], ['I', t('large i')], ['l', t('small L')], ['0', t('zero')], ['O', t('large o')]];
const alike = text => ALIKE
  .filter(([sign]) => text.includes(sign) && (sign === 'l' ? /[1I]/.test(text) : sign !== 'O' || text.includes('0')))
  .map(([sign, words]) => t('{0} is {1}', sign, words)).join(', ');
const mm = value => t('{0} mm', value);

export class Keying {
  constructor() {
    this.box = el('section', null, { data: 'keying', className: 'keying', hidden: true });
    this.box.setAttribute('aria-label', t('What to key in'));
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

  get heading() {
    const place = t('{0} of {1}, round {2}', this.at + 1, this.all.length, this.key.round);
    return this.key.sewn ? t('{0}: sewn ✓', place) : this.key.again ? t('{0}: to be sewn again', place) : place;
  }

  option(i) {
    const k = this.all[i];
    return `${k.order} ${k.name}${k.part && `, ${k.part}`}${k.sewn ? ` ${t('✓ sewn')}` : k.again ? ` ${t('again')}` : ''}`;
  }

  write(state) {
    const key = this.key;
    this.name.replaceChildren(el('span', String(key.order), { className: 'number' }), ' ', el('bdi', key.name), key.part ? ` (${key.part})` : '');
    this.keys.hidden = !key.keyed;
    if (key.keyed) this.keys.replaceChildren(el('span', `${t('key in')} `, { className: 'number' }), el('bdi', shown(key.keyed)));
    this.alike.textContent = key.keyed ? alike(key.keyed) : '';
    this.alike.hidden = this.alike.textContent === '';
    const time = s => s < 60 ? t('{0} s', s) : t('{0} min', `${Math.floor(s / 60)}:${String(s % 60).padStart(2, '0')}`);
    const seconds = key.seconds === undefined ? key.minutes === undefined ? '' : t('{0} min', key.minutes) : time(key.seconds);
    const where = state.laying ? t('one moment') : mm(number(key.onCloth, 1));
    const facts = [
      [state.cloths > 1 ? t('start mark, from the cut left end of cloth {0}', key.cloth) : t('start mark, from the cut left end of the cloth'), where],
      [t('from where the last one ended'), key.fromLast === undefined || state.laying ? '' : mm(key.fromLast)],
      [key.keyed ? t('must come out at') : t('is long'), `${key.estimated ? '~ ' : ''}${mm(key.length)}`],
      [t('no less, no more'), key.least === undefined ? '' : t('{0} to {1} mm', key.least, key.most)], [t('takes'), seconds],
    ].filter(([, how]) => how);
    this.facts.replaceChildren(...facts.map(([what, how]) => {
      const pair = el('div');
      pair.append(el('dt', what), el('dd', how));
      return pair;
    }));
    const next = this.all[this.at + 1];
    if (!next) {
      this.then.replaceChildren(t('This is the last one.'));
      return;
    }
    const called = el('bdi', next.part ? `${next.name}, ${next.part}` : next.name), order = el('span', String(next.order), { className: 'number' });
    this.then.replaceChildren(...(next.round === key.round ? parts('then {0} {1}', order, called) : parts('then {0} {1}, on round {2}', order, called, String(next.round))));
  }
}
