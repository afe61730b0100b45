// The page's own colours for what is drawn; they follow light and dark.

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
  if (!inches) return fine ? `${mm.toFixed(1)} mm` : `${(mm / 10).toFixed(1)} cm`;
  const sixteenths = Math.round(mm / 25.4 * 16);
  const whole = Math.floor(sixteenths / 16);
  let over = sixteenths - whole * 16, under = 16;
  while (over > 0 && over % 2 === 0) { over /= 2; under /= 2; }
  return over === 0 ? `${whole} in` : whole === 0 ? `${over}/${under} in` : `${whole} ${over}/${under} in`;
}
