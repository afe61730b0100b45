// The page's own colours for what is drawn; they follow light and dark.

import { inOrder, number, t } from '../said.js';

export function colours() {
  const style = getComputedStyle(document.documentElement);
  const of = name => style.getPropertyValue(name).trim();
  return {
    table: of('--strip-table'), shade: of('--strip-shade'), cotton: of('--strip-cotton'), turnIn: of('--strip-turn-in'),
    ink: of('--strip-ink'), quiet: of('--strip-quiet'), onTable: of('--strip-on-table'), tape: of('--strip-tape'), onTape: of('--strip-on-tape'), hair: of('--strip-hair'),
    thread: of('--strip-thread'), madder: of('--strip-madder'), weld: of('--strip-weld'), seen: of('--strip-seen'),
    text: of('--strip-text'),
    indigo: ['#0e1430', '#1c2c5c', '#2e4c8e', '#4a70b4', '#8ba9da', '#dce7f8'],
    basting: ['#8f8262', '#cfc3a4', '#f3ecda', '#fffdf6'],
    key: of('--strip-table') + of('--strip-cotton'),
  };
}

const made = new Map();

/** The page's colours with cloth and threads in the job's own, where it says them; they are the same by day and by night. */
export function dyed(c, map) {
  const dyes = map?.dyes;
  if (!dyes) return c;
  const key = `${c.key} ${dyes.cloth ?? ''} ${dyes.threads.join()}`;
  if (!made.has(key)) made.set(key, dye({ ...c, key: key.replaceAll(' ', '_') }, dyes));
  return made.get(key);
}

/** The same for one of several threads. */
export const inThread = (c, index) => c.threads?.[index] ?? c;

function dye(c, { cloth, threads }) {
  if (cloth) {
    // What is written on dark cloth is light, so that it can be read there.
    const light = '#f3efe4', isDark = contrast(cloth, light) > contrast(cloth, '#2a2d4a');
    Object.assign(c, { cotton: cloth, turnIn: mixed(cloth, isDark ? '#ffffff' : '#000000', isDark ? 0.1 : 0.06), ink: isDark ? light : '#2a2d4a' });
    if (isDark) Object.assign(c, { madder: '#ff9a8c', weld: '#e6c35c', quiet: '#b9b4ac', hair: '#ffffff14', onTable: c.onTable });
    else Object.assign(c, { madder: '#8f2f27', weld: '#83651a', quiet: '#77747f' });
  }
  c.threads = threads.map(own => ({
    ...c, thread: own,
    indigo: [mixed(own, '#000000', 0.72), mixed(own, '#000000', 0.4), own, mixed(own, '#ffffff', 0.18), mixed(own, '#ffffff', 0.44), mixed(own, '#ffffff', 0.85)],
  }));
  return c.threads.length === 1 ? { ...c.threads[0], threads: c.threads } : c;
}

const channels = colour => [1, 3, 5].map(i => parseInt(colour.slice(i, i + 2), 16));

function mixed(a, b, part) {
  const to = channels(b);
  return '#' + channels(a).map((v, i) => Math.round(v + (to[i] - v) * part).toString(16).padStart(2, '0')).join('');
}

/** WCAG 2.2: contrast ratio of relative luminances. */
function contrast(a, b) {
  const luminance = colour => channels(colour).map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
    .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

export const lettering = 'system-ui, "DejaVu Sans", "Segoe UI", sans-serif';

/** Draws again when the maker changes between light and dark. */
export function onTheme(changed) {
  const dark = matchMedia('(prefers-color-scheme: dark)');
  dark.addEventListener('change', changed);
  return () => dark.removeEventListener('change', changed);
}

export const isStill = () => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** A canvas as sharp as the screen; returns the ratio. */
export function sharpen(canvas, width, height) {
  const ratio = Math.min(3, window.devicePixelRatio || 1);
  const w = Math.max(1, Math.round(width * ratio)), h = Math.max(1, Math.round(height * ratio));
  if (canvas.width !== w || canvas.height !== h) {
    canvas.width = w;
    canvas.height = h;
  }
  return ratio;
}

export function lengthInWords(mm, inches, fine = false) {
  if (!inches) return fine ? t('{0}\u00a0mm', number(mm, 1)) : t('{0}\u00a0cm', number(mm / 10, 1));
  const sixteenths = Math.round(mm / 25.4 * 16);
  const whole = Math.floor(sixteenths / 16);
  let over = sixteenths - whole * 16, under = 16;
  while (over > 0 && over % 2 === 0) { over /= 2; under /= 2; }
  return t('{0}\u00a0in', over === 0 ? whole : whole === 0 ? `${over}/${under}` : inOrder(`${whole}\u00a0${over}/${under}`));
}
