// The slider of the letters' height: the strip follows each move at once, and is laid out anew when the hand rests.

import { number, t } from './said.js';
import { here } from './strip.js';

const restMs = 180;

export function begin(root, setter) {
  const slide = root.querySelector('input[type=range]'), says = root.querySelector('output');
  let rest = 0, asked = 0, underWay = 0;

  const show = mm => { says.textContent = t('{0} mm', number(mm, 1).replace(/\D0$/, '')); };

  const set = async () => {
    clearTimeout(rest);
    rest = 0;
    const mine = ++asked, mm = Number(slide.value);
    underWay++;
    const now = await setter.invokeMethodAsync('SetAsync', mm).catch(() => null);
    underWay--;
    // While one more is under way, that one says what holds.
    if (mine !== asked || rest || now === null || Math.abs(now - mm) < 0.05) return;
    slide.value = now;
    show(now);
    here.strip?.preview(null);
  };

  const move = () => {
    const mm = Number(slide.value);
    show(mm);
    here.strip?.preview(mm);
    clearTimeout(rest);
    rest = setTimeout(set, restMs);
  };

  const step = e => {
    const by = Number(e.target.closest('[data-step-mm]')?.dataset.stepMm);
    if (!by) return;
    slide.value = Number(slide.value) + by;
    move();
  };

  slide.addEventListener('input', move);
  root.addEventListener('click', step);
  root.dataset.follows = ''; // From here on a move is heard.
  return {
    update({ mm }) {
      // What was laid out before her last move would push the slider back under her finger.
      if (rest || underWay || document.activeElement === slide && Math.abs(Number(slide.value) - mm) < 0.05) return;
      slide.value = mm;
      show(mm);
    },
    dispose() {
      delete root.dataset.follows;
      slide.removeEventListener('input', move);
      root.removeEventListener('click', step);
      if (rest) set();
    },
  };
}
