// The names of the garment as words: round by round, in their order.

import { t } from '../said.js';

const most = 2000;

export function rounds(box, data, sewn, press) {
  let left = most;
  box.replaceChildren(...data.map.rounds.map((round, i) => {
    const part = document.createElement('div'), head = document.createElement('h3'), list = document.createElement('ol');
    const names = data.names.filter(n => n.round === i);
    head.textContent = t('Round {0}', round.number);
    list.append(...names.slice(0, Math.max(0, left)).map(name => {
      const item = document.createElement('li'), button = document.createElement('button'), text = document.createElement('bdi');
      text.textContent = name.text;
      button.type = 'button';
      button.append(text, sewn.has(name.index) ? `, ${t('sewn')}` : '');
      button.addEventListener('click', () => press(name));
      item.append(button);
      return item;
    }));
    if (names.length > left) list.append(Object.assign(document.createElement('li'), { textContent: t('and {0} more: find them above the strip', names.length - Math.max(0, left)) }));
    left -= names.length;
    part.append(head, list);
    return part;
  }));
}
