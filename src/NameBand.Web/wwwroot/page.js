// What holds for the whole page: when it comes to life, undo and redo by their keys, and lists dropped anywhere.

import { line } from './lost.js';

/** The first picture goes before the line by which the page lives: both at once would only hold each other up. */
function firstDrawn() {
  const table = document.querySelector('[data-part=first]') && document.querySelector('[data-part=table]');
  if (!table || table.dataset.outlines) return Promise.resolve();
  return new Promise(done => {
    new MutationObserver((_, watch) => { watch.disconnect(); done(); }).observe(table, { attributeFilter: ['data-outlines'] });
    setTimeout(done, 1500);
  });
}

firstDrawn().then(() => window.Blazor.start({ circuit: { reconnectionHandler: line } }));

/** A field in which the keys of undo belong to what is being typed. */
const isTyping = element => element.matches?.('textarea, select, [contenteditable], input:not([type=checkbox], [type=range], [type=file])');

document.addEventListener('keydown', e => {
  if (!(e.ctrlKey || e.metaKey) || e.altKey || isTyping(e.target)) return;
  const key = e.key.toLowerCase();
  const step = key === 'y' || (key === 'z' && e.shiftKey) ? 'redo' : key === 'z' ? 'undo' : null;
  const button = step && document.querySelector(`[data-step=${step}]`);
  if (!button) return;
  e.preventDefault();
  button.click();
});

/** A press holds though what it began on was moved from under the finger, by something that came to stand above it. */
const stillPx = 4;
let pressed = null;
document.addEventListener('pointerdown', e => { pressed = { button: e.target.closest?.('button'), x: e.clientX, y: e.clientY }; }, true);
document.addEventListener('click', e => {
  const { button, x, y } = pressed ?? {};
  pressed = null;
  if (!button?.isConnected || button.contains(e.target) || Math.hypot(e.clientX - x, e.clientY - y) > stillPx) return;
  e.stopImmediatePropagation();
  e.preventDefault();
  button.click();
}, true);

/**
 * A panel that opens takes the focus from the button that opened it, and gives it back when it is closed, at once. Told by
 * the worktable it would come a moment later, and take away a field that is typed in by then.
 */
let opener = null;
const isFree = element => [document.body, null].includes(element) || element.getAttribute('aria-controls') === 'panel';
const hasPanel = node => node.id === 'panel' || node.querySelector?.('#panel');

/** What is set comes into sight right below the strip, which stays at the top of the window. */
function bring(panel) {
  const strip = document.querySelector('.strip-place.beside'), at = panel.getBoundingClientRect();
  if (!strip || at.bottom <= window.innerHeight) return;
  const top = at.top + window.scrollY - strip.offsetHeight - 8;
  if (top > window.scrollY) window.scrollTo({ top, behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth' });
}

new MutationObserver(changes => {
  const panel = document.getElementById('panel');
  if (panel && changes.some(c => [...c.addedNodes].some(hasPanel))) {
    opener = document.querySelector('[aria-controls=panel][aria-expanded=true]');
    if (isFree(document.activeElement)) document.getElementById('panel-heading').focus({ preventScroll: true });
    bring(panel);
  } else if (!panel && changes.some(c => [...c.removedNodes].some(hasPanel)) && isFree(document.activeElement)) {
    opener?.focus({ preventScroll: true });
  }
}).observe(document.body, { subtree: true, childList: true });

const hasFiles = e => [...e.dataTransfer?.types ?? []].includes('Files');
const dropping = isOn => document.documentElement.toggleAttribute('data-dropping', isOn);
const place = () => document.querySelector('.drop input[type=file]');

document.addEventListener('dragover', e => {
  if (!hasFiles(e)) return;
  // Also where lists are not taken in: else the browser would leave the page and open the file.
  e.preventDefault();
  e.dataTransfer.dropEffect = place() ? 'copy' : 'none';
  dropping(Boolean(place()));
});
document.addEventListener('dragleave', e => { if (!e.relatedTarget) dropping(false); });
document.addEventListener('drop', e => {
  if (!hasFiles(e)) return;
  e.preventDefault();
  dropping(false);
  const input = place();
  if (!input || e.dataTransfer.files.length === 0) return;
  input.files = e.dataTransfer.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
});
