// When the worktable does not answer: that is said at once, what is typed is kept, and the page comes back by itself. A
// line that was only cut is taken up again; where the worktable was started anew, the page is loaded anew and filled as it was.

const { wayTo } = globalThis; // waking.js stands first in the page.
const askEveryMs = 700;
const livesItself = 'name-strip, #machine, .garment, .lost';
const typing = 'main :is(input:not([type=file]), select, textarea)';
const box = document.getElementById('lost');
const mostFailures = 4;
const typed = new Map();   // field → whether it was left, or Enter pressed, while nobody heard
let isLost = false;
let isAnother = false;     // the one that answers now never knew this page
let failures = 0;
let isByHand = false;      // since the page was loaded again: else the page itself moved the focus

for (const kind of ['pointerdown', 'keydown']) addEventListener(kind, () => { isByHand = true; }, { capture: true, once: true });

function say(what) {
  if (box.dataset.says === what) return;
  box.dataset.says = what;
  box.replaceChildren(document.querySelector(`template[data-lost=${what}]`).content.cloneNode(true));
}

/** What is set as soon as the field is left, and not with a form. */
const setsItself = field => field.matches('[data-sets]');

addEventListener('input', e => {
  if (e.target.matches?.(typing) && !e.target.closest(livesItself)) typed.set(e.target, false);
  if (isLost) unheard(e);
}, true);

addEventListener('change', e => {
  if (!e.target.matches?.(typing) || e.target.closest(livesItself)) return;
  if (isLost) {
    typed.set(e.target, true);
    unheard(e);
  } else if (setsItself(e.target)) {
    typed.delete(e.target);
  }
}, true);

addEventListener('submit', e => {
  if (!isLost) for (const field of e.target.elements ?? []) typed.delete(field);
}, true);

/** Nobody would hear it; and what is pressed would be lost without a word. */
function unheard(e) {
  if (e.target.closest?.(livesItself)) return;
  e.stopImmediatePropagation();
  if (e.type !== 'click' && e.type !== 'submit') return;
  e.preventDefault();
  if (!box.dataset.says) say('silent');
  box.classList.remove('pressed');
  void box.offsetWidth;
  box.classList.add('pressed');
}

addEventListener('submit', e => { if (isLost) unheard(e); }, true);
addEventListener('click', e => { if (isLost && e.target.closest?.('a[href], main :is(button, summary, input[type=checkbox])')) unheard(e); }, true);

/** What is pressed, what is open, what is typed and where she is, for the page that is loaded anew. */
function keep() {
  const fields = [...typed].filter(([field]) => field.isConnected).map(([field, isLeft]) => ({
    way: wayTo(field), value: field.type === 'checkbox' ? field.checked : field.value, sets: setsItself(field), isLeft,
  }));
  const open = [...document.querySelectorAll('main :is([aria-expanded=true], details[open] > summary)')].filter(e => !e.closest(livesItself)).map(wayTo);
  const at = document.activeElement;
  const focus = at?.matches(typing) ? { way: wayTo(at), from: at.selectionStart ?? null, to: at.selectionEnd ?? null } : null;
  const name = document.querySelector('name-strip')?.strip?.view.pressed;
  const pressed = name?.list ? { list: name.list, line: name.line } : null;
  sessionStorage.setItem('kept', JSON.stringify({ path: location.pathname, pressed, open, fields, focus }));
}

/** The line was only cut: what was typed meanwhile is told now. */
function tell() {
  for (const [field, isLeft] of typed) {
    if (!field.isConnected) continue;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    if (isLeft) field.dispatchEvent(new Event('change', { bubbles: true }));
  }
}

function found() {
  isLost = false;
  delete box.dataset.says;
  box.replaceChildren();
  tell();
}

async function answer() {
  try {
    return (await fetch('/strip/version', { cache: 'no-store', signal: AbortSignal.timeout(3000) })).status;
  } catch {
    return 0;
  }
}

/** Whether the line holds again; a worktable that was started anew refuses it, and would take a second call for granted. */
async function reconnect() {
  if (isAnother) return false;
  const isBack = await window.Blazor.reconnect().catch(() => null);
  failures = isBack === null ? failures + 1 : 0;
  isAnother = isBack === false || failures >= mostFailures;
  return isBack;
}

async function come() {
  try {
    await look();
  } catch {
    // Looked at again: nothing that goes wrong here may end the looking.
  }
  if (isLost) setTimeout(come, askEveryMs);
}

async function look() {
  const status = await answer();
  if (!isLost) return;
  if (status !== 200) {
    say(status === 403 ? 'locked' : 'silent');
  } else if (await reconnect()) {
    return; // onConnectionUp has said so.
  } else if (isAnother) {
    if ('busy' in (document.getElementById('machine')?.dataset ?? {})) {
      say('back');
      return;
    }
    keep();
    location.reload();
  }
}

/** Waits for something on the page, but not for ever: what is not there any longer is passed over. */
async function until(look) {
  for (let i = 0; i < 100; i++) {
    const seen = look();
    if (seen) return seen;
    await new Promise(done => setTimeout(done, 50));
  }
  return null;
}

/** The name that was pressed on the strip, whose card goes with it. */
async function press({ list, line }) {
  const strip = await until(() => {
    const there = document.querySelector('name-strip')?.strip;
    return there?.hearer && there.data.map ? there : null;
  });
  const name = strip?.data.find(list, line);
  if (!name) return;
  strip.goTo(name);
  await until(() => document.getElementById('touched-name'));
}

async function open(way) {
  const handle = await until(() => document.querySelector(way));
  const isOpen = () => handle.matches('summary') ? handle.parentElement.open : handle.getAttribute('aria-expanded') === 'true';
  if (!handle || isOpen()) return;
  handle.click();
  await until(isOpen);
  // What opens takes the focus a moment later.
  if (handle.getAttribute('aria-controls') === 'panel') await until(() => document.activeElement?.id === 'panel-heading');
}

async function fill({ way, value, sets, isLeft }) {
  const field = await until(() => document.querySelector(way));
  if (!field || typed.has(field)) return;
  field[field.type === 'checkbox' ? 'checked' : 'value'] = value;
  const tell = kind => field.dispatchEvent(new Event(kind, { bubbles: true }));
  tell('input');
  if (!sets || isLeft) {
    tell('change');
    return;
  }
  // A browser tells of a change only where it was typed by hand since the field was entered.
  const told = new AbortController();
  field.addEventListener('change', () => told.abort(), { signal: told.signal });
  field.addEventListener('blur', () => { if (isByHand) { told.abort(); tell('change'); } }, { signal: told.signal });
  field.addEventListener('keydown', e => { if (e.key === 'Enter') { told.abort(); tell('change'); } }, { signal: told.signal });
}

async function restore() {
  const kept = JSON.parse(sessionStorage.getItem('kept') ?? 'null');
  sessionStorage.removeItem('kept');
  if (kept?.path !== location.pathname || !await until(() => document.querySelector('[data-alive]'))) return;
  if (kept.pressed) await press(kept.pressed);
  for (const way of kept.open) await open(way);
  for (const field of kept.fields) await fill(field);
  const place = kept.focus && await until(() => document.querySelector(kept.focus.way));
  if (!place) return;
  place.addEventListener('blur', () => { if (!isByHand) setTimeout(() => place.focus({ preventScroll: true })); });
  place.focus({ preventScroll: true });
  if (kept.focus.from !== null && place.matches('input, textarea')) place.setSelectionRange?.(kept.focus.from, kept.focus.to);
}

restore();

/** What the page's own line tells when it is cut and when it holds again. */
export const line = {
  onConnectionDown() {
    if (isLost) return;
    [isLost, isAnother, failures] = [true, false, 0];
    come();
  },
  onConnectionUp() { if (isLost) found(); },
};
