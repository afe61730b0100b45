// What is said of a name that is typed or traced: done with its minutes and its length, spoiled, not sewn after all.

import { el } from './machine.js';
import { t } from './said.js';
import { Clock, once, tell } from './machine-clock.js';

export class Naming {
  /**
   * @param said told when something was written down.
   * @param onward goes on to the next name, or to the next part of it; false where there is none.
   */
  constructor(box, state, key, said, onward, busy) {
    Object.assign(this, { box, state, key, said, onward });
    const number = (name, max) => el('input', null, { type: 'number', min: '0', max, step: 'any', inputMode: 'decimal', name });
    const field = (text, input, unit) => {
      const label = el('label', text);
      label.append(' ', input, unit ? ` ${unit}` : '');
      return label;
    };
    this.length = number('length', '10000');
    this.ended = number('ended', '10000');
    this.began = number('began', '10000');
    this.minutes = number('minutes', '1440');
    this.hands = number('hands', '1440');
    this.note = el('input', null, { type: 'text', maxLength: 500, name: 'note' });
    this.lengthLabel = field(t('it came out at'), this.length, t('mm'));
    this.blank = el('div', null, { className: 'machine-fields' });
    this.blank.append(field(t('its first word ended at'), this.ended, t('mm')), field(t('its second began at'), this.began, t('mm')));
    this.clock = new Clock(busy);
    this.done = once(el('button', t('Done, next'), { type: 'submit', className: 'done large', data: 'done-next' }));
    this.scrap = el('button', t('It is on a scrap'), { type: 'button', data: 'scrap' });
    this.spoiled = el('button', t('Spoiled: sew it again'), { type: 'button', data: 'again' });
    this.mistake = el('button', t('It is not sewn after all'), { type: 'button', data: 'mistake' });
    this.undo = el('button', t('undo'), { type: 'button', data: 'undo', hidden: true });
    this.answer = el('p', '', { data: 'answer' });
    this.answer.setAttribute('role', 'status');
    this.more = el('details', null, { className: 'machine-more' });
    const rest = el('div', null, { className: 'machine-fields' });
    rest.append(field(t('it took at the machine'), this.minutes, t('min')), field(t('it took by hand'), this.hands, t('min')), field(t('a remark'), this.note), this.scrap);
    this.more.append(el('summary', t('more to say of it')), this.blank, rest);
    this.form = el('form', null, { className: 'machine-name-form' });
    const first = el('div', null, { className: 'machine-fields' });
    first.append(this.lengthLabel, this.clock.button, this.clock.says);
    this.form.append(first, this.done, this.more);
    this.form.addEventListener('submit', e => { e.preventDefault(); this.#done(); });
    this.scrap.addEventListener('click', () => this.#scrap());
    this.spoiled.addEventListener('click', () => this.#say('again', which => t('{0} is to be sewn again where it was.', which)));
    this.mistake.addEventListener('click', () => this.#say('mistake', which => t('{0} counts as not sewn.', which)));
    this.undo.addEventListener('click', () => this.#undo());
    const buttons = el('div', null, { className: 'machine-buttons' });
    buttons.append(this.spoiled, this.mistake);
    const answers = el('div', null, { className: 'machine-buttons machine-answer' });
    answers.append(this.answer, this.undo);
    box.append(this.form, buttons, answers);
  }

  dispose() { this.clock.dispose(); }

  get isBusy() { return this.clock.ms > 0 || this.#fields.some(f => f.value !== ''); }

  get #fields() { return [this.length, this.ended, this.began, this.minutes, this.hands, this.note]; }

  reset() {
    for (const field of this.#fields) field.value = '';
    this.more.open = false;
    this.clock.reset();
    if (!this.isKept) this.#answered('');
  }

  write() {
    const key = this.key(), canSay = !this.state().laying;
    this.clock.of(`${this.state().title}/name ${key.order}.${key.part ?? 0}`);
    const isLast = key.last !== false;
    if (this.isSettling && canSay) {
      this.isSettling = false;
      this.#answered(t('The marks are set out again: look at them, and press once more.'));
    }
    this.lengthLabel.hidden = !key.measured;
    this.blank.hidden = !(key.measured && key.parted);
    this.scrap.hidden = !key.measured || key.logged;
    this.clock.hide(key.logged);
    this.more.hidden = !isLast;
    this.form.hidden = key.logged && !key.measured;
    this.done.textContent = !isLast ? t('Next part') : key.logged ? t('Log its length') : t('Done, next');
    this.done.setAttribute('aria-disabled', String(!canSay));
    this.spoiled.hidden = this.mistake.hidden = !key.logged;
    this.clock.tick();
  }

  #word(deed) {
    const value = input => input.value === '' || input.closest('[hidden]') ? undefined : Number(input.value);
    const key = this.key();
    if (this.minutes.value === '' && !key.logged) this.minutes.value = this.clock.minutes;
    return {
      name: key.order, deed, length: value(this.length), ended: value(this.ended), began: value(this.began),
      minutes: value(this.minutes), hands: value(this.hands), note: this.note.value, mark: this.state().plan,
    };
  }

  async #done() {
    const key = this.key();
    if (this.state().laying) {
      // The name may have been sewn at the marks before: what she presses is not done without her.
      this.isSettling = true;
      this.#answered(t('One moment: the marks are being set out again.'));
      return;
    }
    if (key.last === false) {
      this.onward(true);
      return;
    }
    const word = this.#word('sewn');
    if (key.logged && word.length === undefined) {
      this.#answered(t('Give the length that it came out at.'));
      this.length.focus();
      return;
    }
    this.clock.stop();
    const wasLogged = key.logged;
    const words = which => wasLogged ? t('{0} came out at {1} mm: that is logged.', which, word.length) : t('{0} is logged as sewn.', which);
    await this.#tell(word, words, !key.logged, key);
  }

  async #scrap() {
    const word = this.#word('sewn');
    if (word.length === undefined) {
      this.#answered(t('Give the length that it came out at.'));
      this.length.focus();
      return;
    }
    const { name, deed, length, ended, began, mark } = word;
    const words = which => t('{0} came out at {1} mm on a scrap: that is logged, and it is still to sew.', which, length);
    await this.#tell({ name, deed, length, ended, began, mark, scrap: true }, words, false, this.key());
  }

  #say(deed, words) { return this.#tell({ name: this.key().order, deed }, words, false, this.key()); }

  async #undo() {
    const { order, name, isScrap } = this.last;
    this.undo.hidden = true;
    const words = which => isScrap ? t('{0} has one length less: that on a scrap counts no longer.', which) : t('{0} counts as not sewn.', which);
    await this.#tell({ name: order, deed: 'mistake', ...(isScrap && { scrap: true }) }, words, false, { order, name });
  }

  /**
   * @param words what is said of the name, once it is written down.
   * @param isNew it is sewn now, and the next name's turn.
   */
  async #tell(word, words, isNew, key) {
    if (this.telling) return;
    this.telling = true;
    this.#answered(t('logging it'));
    const got = await tell(word);
    this.telling = false;
    if (!got.written) {
      this.#answered(got.problems.join(' '));
      return;
    }
    // She may have gone on to another name meanwhile: its clock and fields are left alone.
    const isHere = this.key()?.order === word.name;
    this.isKept = true;
    let isThere = true;
    if (isHere) {
      this.reset();
      if (isNew) key.sewn = key.logged = true;
      isThere = !isNew || this.onward();
    }
    this.isKept = false;
    const isScrap = word.scrap === true && word.deed === 'sewn';
    this.last = { order: key.order, name: key.name, isScrap };
    this.#answered(`${words(`${key.order} “${key.name}”`)}${isThere ? '' : ` ${t('That was the last one.')}`}`, isNew || isScrap);
    if (isNew && isHere && isThere) this.done.focus();
    this.said();
  }

  #answered(words, canUndo = false) {
    this.answer.textContent = words;
    this.undo.hidden = !canUndo;
  }
}
