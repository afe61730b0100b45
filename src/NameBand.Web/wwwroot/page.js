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
