// What is said of a hooping: done with its minutes, spoiled, marked by mistake; and a clock to take the minutes from.

import { el } from './machine.js';
import { Clock, tell } from './machine-clock.js';

export class Saying {
  constructor(box, state, hooping, said, busy) {
    Object.assign(this, { box, state, hooping, said });
    this.done = el('button', 'Done', { type: 'button', data: 'done', className: 'done' });
    this.spoiled = el('button', 'Spoiled: sew it again', { type: 'button', data: 'again' });
    this.patch = el('button', 'Spoiled, and the strip is cut', { type: 'button', data: 'patch' });
    this.mistake = el('button', 'It is not sewn after all', { type: 'button', data: 'mistake' });
    this.answer = el('p', '', { data: 'answer' });
    this.answer.setAttribute('role', 'status');
    this.form = this.#form();
    this.done.addEventListener('click', () => this.#ask());
    this.spoiled.addEventListener('click', () => this.#tell({ deed: 'again' }));
    this.patch.addEventListener('click', () => this.#tell({ deed: 'patch' }));
    this.mistake.addEventListener('click', () => this.#tell({ deed: 'mistake' }));
    const buttons = el('div', null, { className: 'machine-buttons' });
    this.clock = new Clock(busy);
    buttons.append(this.clock.button, this.clock.says, this.done, this.spoiled, this.patch, this.mistake);
    box.append(buttons, this.form, this.answer);
  }

  get isBusy() { return !this.form.hidden || this.clock.ms > 0; }

  dispose() { this.clock.dispose(); }

  #form() {
    const form = el('form', null, { hidden: true, data: 'form' });
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
    this.machineLabel = field('on', this.machine);
    const save = el('button', 'Log it', { type: 'submit', className: 'done', data: 'save' });
    const leave = el('button', 'Not yet', { type: 'button' });
    leave.addEventListener('click', () => { form.hidden = true; this.done.focus(); });
    form.append(field('minutes at the machine', this.minutes), field('minutes by hand', this.hands), this.machineLabel, field('mark on the sheet you sewed from', this.mark), field('a note', this.note), save, leave);
    form.addEventListener('submit', e => {
      e.preventDefault();
      const number = input => input.value === '' ? null : Number(input.value);
      this.#tell({ deed: 'sewn', mark: this.mark.value, minutes: number(this.minutes), hands: number(this.hands), note: this.note.value, machine: this.machineLabel.hidden ? '' : this.machine.value });
    });
    return form;
  }

  reset() {
    this.form.hidden = true;
    this.answer.textContent = '';
    this.minutes.value = this.hands.value = this.note.value = this.mark.value = '';
    this.clock.reset();
  }

  write() {
    const hooping = this.hooping(), state = this.state();
    this.clock.of(`${state.title}/hooping ${hooping.number}`);
    const can = state.hasPaths && state.made;
    this.done.hidden = hooping.sewn || !can;
    this.clock.hide(this.done.hidden);
    this.spoiled.hidden = this.mistake.hidden = this.patch.hidden = !hooping.sewn || !can;
    this.mark.required = hooping.asksForMark;
    this.machineLabel.hidden = state.machines.length < 2;
    const named = [...this.machine.options].map(o => o.value);
    if (named.join('\n') !== state.machines.join('\n')) {
      const chosen = this.machine.selectedIndex;
      this.machine.replaceChildren(...state.machines.map(m => new Option(m, m)));
      this.machine.selectedIndex = Math.max(0, Math.min(chosen, state.machines.length - 1));
    }
    this.clock.tick();
  }

  #ask() {
    this.clock.stop();
    this.form.hidden = false;
    if (this.minutes.value === '') this.minutes.value = this.clock.minutes;
    this.answer.textContent = '';
    this.minutes.focus();
  }

  async #tell(word) {
    if (this.telling) return;
    this.telling = true;
    const { number } = this.hooping();
    this.answer.textContent = 'logging it';
    const got = await tell({ hooping: number, ...word });
    this.telling = false;
    if (!got.written) {
      this.answer.textContent = got.problems.join(' ');
      return;
    }
    // She may have gone on to the next one meanwhile: its clock and minutes are left alone.
    const isHere = this.hooping()?.number === number;
    if (word.deed === 'sewn' && isHere) this.reset();
    const words = { sewn: 'is logged as sewn', again: 'is to be sewn again where it was', patch: `is to be sewn on a piece of its own${got.patch ? `, ${got.patch} long on the cloth` : ''}`, mistake: 'is marked as not sewn' };
    this.answer.textContent = `Hooping ${number}${got.names ? `, ${got.names},` : ''} ${words[word.deed]}.`;
    this.said(word.deed, isHere);
  }
}
