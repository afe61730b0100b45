// From the last name to the last stitch at the hem: which steps are done, round by round.

import { el } from './machine.js';
import { t } from './said.js';
import { tell } from './machine-clock.js';

export class Finishing {
  constructor(section, said) {
    Object.assign(this, { section, said });
    this.box = section.querySelector('[data-part=finish]');
    this.list = el('ol', null, { className: 'machine-steps' });
    this.answer = el('p', '', { data: 'finish-answer' });
    this.answer.setAttribute('role', 'status');
    this.box.append(this.list, this.answer);
  }

  write(finish) {
    const told = JSON.stringify(finish ?? null);
    if (told === this.told) return;
    this.told = told;
    const held = this.list.contains(document.activeElement) ? document.activeElement.dataset.step : '';
    this.list.replaceChildren(...(finish?.steps ?? []).map(s => this.#step(s, finish.rounds)));
    if (held) this.list.querySelector(`[data-step="${held}"]`)?.focus();
  }

  #step(step, rounds) {
    const item = el('li');
    const many = rounds.length > 1;
    item.append(el('span', step.words, { className: 'machine-step' }));
    for (const round of rounds) {
      const isDone = step.done.includes(round.number);
      const button = el('button', `${many ? `${t('round {0}', round.number)} ` : ''}${isDone ? t('✓ done') : t('done')}`, { type: 'button' });
      button.dataset.step = `${step.step}-${round.number}`;
      button.setAttribute('aria-pressed', String(isDone));
      button.setAttribute('aria-label', many ? t('{0}, round {1}', step.words, round.number) : step.words);
      button.disabled = !isDone && !round.sewn;
      button.addEventListener('click', () => this.#tell({ deed: isDone ? 'undone' : 'done', step: step.step, round: many ? round.number : 0 }, step, isDone));
      item.append(' ', button);
    }
    return item;
  }

  async #tell(word, step, wasDone) {
    const got = await tell(word);
    const which = word.round > 0 ? t('Round {0}', word.round) : t('All of it');
    this.answer.textContent = !got.written ? got.problems.join(' ')
      : wasDone ? t('{0} is not {1} after all, and nor is what comes after it.', which, step.words)
      : t('{0} is {1}, and what comes before it is done too.', which, step.words);
    if (got.written) this.said();
  }
}
