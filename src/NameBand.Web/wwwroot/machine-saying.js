// What is said of a hooping: done with its minutes, spoiled, marked by mistake; and a clock to take the minutes from.

import { el } from './machine.js';
import { t } from './said.js';
import { Clock, once, tell } from './machine-clock.js';

export class Saying {
  /**
   * @param said told when something was written down.
   * @param onward goes on to the next one that is not sewn; false where there is none.
   */
  constructor(box, state, hooping, said, onward, busy) {
    Object.assign(this, { box, state, hooping, said, onward });
    this.done = once(el('button', t('Done, next'), { type: 'submit', data: 'done', className: 'done large' }));
    this.spoiled = el('button', t('Spoiled: sew it again'), { type: 'button', data: 'again' });
    this.patch = el('button', t('Spoiled, and the strip is cut'), { type: 'button', data: 'patch' });
    this.mistake = el('button', t('It is not sewn after all'), { type: 'button', data: 'mistake' });
    this.undo = el('button', t('undo'), { type: 'button', data: 'undo', hidden: true });
    this.answer = el('p', '', { data: 'answer' });
    this.answer.setAttribute('role', 'status');
    this.clock = new Clock(busy);
    this.form = this.#form();
    this.spoiled.addEventListener('click', () => this.#tell({ deed: 'again' }));
    this.patch.addEventListener('click', () => this.#tell({ deed: 'patch' }));
    this.mistake.addEventListener('click', () => this.#tell({ deed: 'mistake' }));
    this.undo.addEventListener('click', () => this.#tell({ deed: 'mistake', hooping: this.last }));
    const row = (...all) => {
      const buttons = el('div', null, { className: 'machine-buttons' });
      buttons.append(...all);
      return buttons;
    };
    const answers = row(this.answer, this.undo);
    answers.classList.add('machine-answer');
    box.append(this.form, answers, row(this.spoiled, this.patch, this.mistake));
  }

  get isBusy() { return this.clock.ms > 0 || this.#fields.some(f => f.value !== ''); }

  get #fields() { return [this.minutes, this.hands, this.note, this.mark]; }

  dispose() { this.clock.dispose(); }

  #form() {
    const form = el('form', null, { className: 'machine-name-form' });
    const field = (text, input) => {
      const label = el('label', text);
      label.append(' ', input);
      return label;
    };
    const minutes = () => el('input', null, { type: 'number', min: '0', max: '1440', step: 'any', inputMode: 'decimal' });
    this.minutes = Object.assign(minutes(), { name: 'minutes' });
    this.hands = Object.assign(minutes(), { name: 'hands' });
    this.mark = el('input', null, { type: 'text', maxLength: 20, size: 6, name: 'mark', autocapitalize: 'characters', autocomplete: 'off', spellcheck: false });
    this.note = el('input', null, { type: 'text', maxLength: 500, name: 'note' });
    this.machine = el('select', null, { name: 'machine' });
    this.machineLabel = field(t('on'), this.machine);
    this.markLabel = field(t('mark on the sheet you sewed from'), this.mark);
    this.first = el('div', null, { className: 'machine-fields' });
    this.first.append(this.clock.button, this.clock.says);
    this.rest = el('div', null, { className: 'machine-fields' });
    this.rest.append(field(t('minutes at the machine'), this.minutes), field(t('minutes by hand'), this.hands), field(t('a note'), this.note));
    this.more = el('details', null, { className: 'machine-more' });
    this.more.append(el('summary', t('more to say of it')), this.rest);
    form.append(this.first, this.done, this.more);
    form.addEventListener('submit', e => { e.preventDefault(); this.#sewn(); });
    return form;
  }

  reset() {
    if (!this.isKept) this.#answered('');
    for (const field of this.#fields) field.value = '';
    this.more.open = false;
    this.clock.reset();
  }

  write() {
    const hooping = this.hooping(), state = this.state();
    this.clock.of(`${state.title}/hooping ${hooping.number}`);
    const can = state.hasPaths && state.made;
    this.form.hidden = hooping.sewn || !can;
    this.spoiled.hidden = this.mistake.hidden = this.patch.hidden = !hooping.sewn || !can;
    this.#place(this.markLabel, hooping.asksForMark);
    this.mark.required = hooping.asksForMark;
    this.#place(this.machineLabel, state.machines.length > 1);
    this.machineLabel.hidden = state.machines.length < 2;
    const named = [...this.machine.options].map(o => o.value);
    if (named.join('\n') !== state.machines.join('\n')) {
      const chosen = this.machine.selectedIndex;
      this.machine.replaceChildren(...state.machines.map(m => new Option(m, m)));
      this.machine.selectedIndex = Math.max(0, Math.min(chosen, state.machines.length - 1));
    }
    this.clock.tick();
  }

  /** What has to be said stands before the press, the rest is there when it is wanted. */
  #place(label, isAsked) {
    const box = isAsked ? this.first : this.rest;
    if (label.parentElement !== box) box.append(label);
  }

  #sewn() {
    this.clock.stop();
    if (this.minutes.value === '') this.minutes.value = this.clock.minutes;
    const number = input => input.value === '' ? null : Number(input.value);
    return this.#tell({ deed: 'sewn', mark: this.mark.value, minutes: number(this.minutes), hands: number(this.hands), note: this.note.value, machine: this.machineLabel.hidden ? '' : this.machine.value });
  }

  async #tell(word) {
    if (this.telling) return;
    this.telling = true;
    const number = word.hooping ?? this.hooping().number;
    this.#answered(t('logging it'));
    const got = await tell({ hooping: number, ...word });
    this.telling = false;
    if (!got.written) {
      this.#answered(got.problems.join(' '));
      return;
    }
    // She may have gone on to the next one meanwhile: its clock and minutes are left alone.
    const hooping = this.hooping(), isNew = word.deed === 'sewn' && hooping?.number === number;
    this.isKept = true;
    if (isNew) {
      hooping.sewn = true;
      this.reset();
    }
    const isThere = !isNew || this.onward();
    this.isKept = false;
    this.last = number;
    const which = got.names ? t('Hooping {0}, {1},', number, got.names) : t('Hooping {0}', number);
    const words = {
      sewn: t('{0} is logged as sewn.', which), again: t('{0} is to be sewn again where it was.', which), mistake: t('{0} counts as not sewn.', which),
      patch: got.patch ? t('{0} is to be sewn on a piece of its own, {1} long on the cloth.', which, got.patch) : t('{0} is to be sewn on a piece of its own.', which),
    };
    this.#answered(`${words[word.deed]}${isThere ? '' : ` ${t('That was the last one.')}`}`, word.deed === 'sewn');
    this.said();
    if (isNew && isThere) this.done.focus();
  }

  #answered(words, canUndo = false) {
    this.answer.textContent = words;
    this.undo.hidden = !canUndo;
  }
}
