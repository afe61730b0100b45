// The strip in words: which names are on the table, what is known of one, and the search for one.

import { many, parts, t } from '../said.js';
import { lengthInWords } from './colours.js';
import { onCloth } from './data.js';

const mostListed = 40;

const plain = text => text.normalize('NFKD').replace(/\p{M}/gu, '').toLocaleLowerCase('en').trim();

function element(tag, text, more = {}) {
  const e = document.createElement(tag);
  if (text !== undefined) e.textContent = text;
  Object.assign(e, more);
  return e;
}

function nameButton(name, pressed) {
  const button = element('button', undefined, { type: 'button' });
  button.append(element('bdi', name.text));
  button.dataset.name = String(name.index);
  button.addEventListener('click', () => pressed(name));
  return button;
}

/** The names in sight as buttons, for those who do not see the picture or use no mouse. */
export class SeenList {
  constructor(list, says, view, press) {
    Object.assign(this, { list, says, view, press, shown: '' });
  }

  dispose() { clearTimeout(this.timer); }

  later() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.#write(), 500);
  }

  #write() {
    const { view } = this;
    const names = view.seen ?? [];
    const inches = view.inches;
    const from = Math.max(0, view.camera.left), to = Math.min(view.camera.longest, view.camera.right);
    const state = names.map(n => n.index).join() + inches + view.data.map.layout;
    const { map } = view.data, round = view.tapeRound, count = names.filter(n => n.kind === 'name').length;
    const [first, last] = [onCloth(map, round, from), onCloth(map, round, to)];
    const begin = lengthInWords(first.mm, inches);
    const end = last.cloth === first.cloth ? lengthInWords(last.mm, inches) : t('{0} of cloth {1}', lengthInWords(last.mm, inches), last.cloth);
    this.says.textContent = map.rounds.length > 1
      ? many(count, '{0} name on the table, round {1} on the flat cloth from {2} to {3}', '{0} names on the table, round {1} on the flat cloth from {2} to {3}',
        map.rounds[round].number, begin, end)
      : many(count, '{0} name on the table, on the flat cloth from {1} to {2}', '{0} names on the table, on the flat cloth from {1} to {2}', begin, end);
    if (state === this.shown || this.list.contains(document.activeElement)) return;
    this.shown = state;
    this.list.replaceChildren(...names.slice(0, mostListed).map(name => {
      const item = element('li');
      const button = nameButton(name, this.press);
      button.addEventListener('focus', () => { view.pointed = name; view.changed(); });
      button.addEventListener('blur', () => { view.pointed = null; view.changed(); this.later(); });
      item.append(button);
      return item;
    }));
    if (names.length > mostListed) this.list.append(element('li', t('and {0} more: come closer to see them', names.length - mostListed)));
  }
}

/** Finds names by any part of them, whatever their accents. */
export class Finder {
  constructor(field, list, says, view, go) {
    this.view = view;
    this.list = list;
    this.says = says;
    this.go = go;
    this.gone = new AbortController();
    document.addEventListener('focusin', e => {
      if (e.target !== field && !list.contains(e.target)) list.hidden = true;
    }, { signal: this.gone.signal });
    field.addEventListener('focus', () => this.#find(field.value));
    field.addEventListener('input', () => this.#find(field.value));
    field.addEventListener('keydown', e => {
      const buttons = [...list.querySelectorAll('button')];
      if (e.key === 'Enter' && buttons.length > 0) { buttons[0].click(); e.preventDefault(); }
      if (e.key === 'ArrowDown' && buttons.length > 0) { buttons[0].focus(); e.preventDefault(); }
      if (e.key === 'Escape') { field.value = ''; this.#find(''); }
    });
    list.addEventListener('keydown', e => {
      const buttons = [...list.querySelectorAll('button')], i = buttons.indexOf(document.activeElement);
      if (e.key === 'ArrowDown') { (buttons[i + 1] ?? buttons[0]).focus(); e.preventDefault(); }
      if (e.key === 'ArrowUp') { (buttons[i - 1] ?? field).focus(); e.preventDefault(); }
      if (e.key === 'Escape') { field.focus(); field.value = ''; this.#find(''); }
    });
  }

  dispose() { this.gone.abort(); }

  #find(text) {
    const wanted = plain(text);
    const found = wanted ? this.view.data.names.filter(n => plain(n.text).includes(wanted)) : [];
    this.list.hidden = !wanted;
    this.list.replaceChildren(...found.slice(0, 8).map(name => {
      const item = element('li');
      item.append(nameButton(name, n => { this.list.hidden = true; this.go(n); }));
      return item;
    }));
    if (wanted && found.length === 0) this.list.append(element('li', t('no such name on the strips')));
    if (found.length > 8) this.list.append(element('li', t('and {0} more', found.length - 8)));
  }
}

/** What is known of a name, as text. */
export function facts(box, name, view, close, playback) {
  const { map, minutes } = view.data;
  const inches = view.inches;
  const focused = [...box.querySelectorAll('button')].indexOf(document.activeElement);
  box.replaceChildren();
  box.hidden = !name;
  if (!name) return;
  const head = element('h3');
  head.append(element('bdi', name.text));
  const list = element('dl');
  const say = (what, how) => { const pair = element('div'); pair.append(element('dt', what), element('dd', how)); list.append(pair); };
  say(t('number'), String(name.order));
  if (name.kind === 'heading') {
    say(t('what it is'), t('the heading of a group'));
  } else {
    const row = element('dd');
    row.append(...parts('line {0} of {1}', String(name.line), element('bdi', name.list)));
    const pair = element('div');
    pair.append(element('dt', t('row')), row);
    list.append(pair);
  }
  const { cloth } = onCloth(map, name.round, name.start);
  const isOnOne = map.rounds.every(r => r.rulers.every(u => u.cloth === cloth));
  const [from, to] = [name.onCloth, name.onCloth + name.width].map(mm => lengthInWords(mm, inches, true));
  const piece = [map.rounds.length > 1 && t('round {0}', map.rounds[name.round].number), !isOnOne && t('cloth {0}', cloth)].filter(Boolean).join(', ');
  say(t('place'), piece ? t('{0}, from {1} to {2} on the flat cloth', piece, from, to) : t('from {0} to {1} on the flat cloth', from, to));
  say(t('width'), lengthInWords(name.width, inches, true));
  const hooping = map.hoopings.find(h => h.number === name.hooping);
  if (hooping) {
    const counted = minutes?.[hooping.number];
    const how = hooping.sewn ? t('sewn') : !minutes ? t('counting') : counted > 0 ? t('{0} min', Math.max(1, Math.round(counted))) : '';
    say(map.hooped ? t('hooping') : t('run'), [hooping.number, how].filter(Boolean).join(', '));
  }
  if (name.gone) say(t('note'), t('sewn, and no longer asked for'));
  const buttons = element('p', undefined, { className: 'facts-buttons' });
  if (map.hasPaths && hooping) {
    const play = element('button', t('Play hooping {0}', hooping.number), { type: 'button' });
    play.addEventListener('click', () => playback(hooping.number));
    buttons.append(play);
  }
  const shut = element('button', t('Close'), { type: 'button' });
  shut.addEventListener('click', close);
  buttons.append(shut);
  box.append(head, list, buttons);
  if (focused >= 0) (buttons.children[focused] ?? shut).focus();
}
