// Between the first picture and the moment the page lives: what is pressed, typed, chosen or sent then is kept, said to be
// kept, and done as soon as the page lives. Runs before anything can be pressed; the strip and the machine live by themselves.

(() => {
  const isAlive = () => document.querySelector('[data-alive]');
  const own = 'main :is(button, input, select, textarea, form, summary)';
  const livesItself = 'name-strip, #machine, .garment';
  const typed = new Map();   // where → what stands in a field now
  let pressed = null;        // the last press: a second one means that one, and not both
  let focused = null;

  /** The way to an element from the nearest one with a name of its own; the page that lives is built alike. */
  function wayTo(element) {
    if (element.id && !/^lists-/.test(element.id)) return '#' + CSS.escape(element.id);
    const parent = element.parentElement;
    if (!parent) return element.localName;
    const alike = [...parent.children].filter(e => e.localName === element.localName);
    return `${wayTo(parent)} > ${element.localName}:nth-of-type(${alike.indexOf(element) + 1})`;
  }

  globalThis.wayTo = wayTo;

  const wordsOf = element => element.matches('.part') ? '' : element.textContent.trim();

  function kept(e) {
    const element = e.target.closest?.(own);
    return element && !element.closest(livesItself) && !isAlive() ? element : null;
  }

  function say() {
    if (document.querySelector('.waking')) return;
    const words = document.createElement('p');
    words.className = 'waking';
    words.setAttribute('role', 'status');
    document.body.append(words);
    words.textContent = document.querySelector('template[data-waking]').content.textContent;
  }

  function press(e) {
    const button = kept(e);
    if (!button?.matches('button, summary, input[type=checkbox]') || button.type === 'submit') return;
    pressed = { way: wayTo(button), words: wordsOf(button) };
    say();
  }

  function send(e) {
    const form = kept(e);
    if (!form) return;
    e.preventDefault();
    pressed = { way: wayTo(form), isForm: true };
    say();
  }

  function type(e) {
    const field = kept(e);
    if (!field?.matches('input:not([type=checkbox]), select, textarea')) return;
    typed.set(wayTo(field), field.type === 'file' ? { files: field.files } : field.type === 'radio' ? { checked: field.checked } : { value: field.value });
    if (e.type === 'change') say();
  }

  function focus(e) {
    const element = kept(e);
    if (element) focused = wayTo(element);
  }

  function wake() {
    if (!isAlive()) return;
    watch.disconnect();
    for (const [kind, listener] of listeners) document.removeEventListener(kind, listener, true);
    document.querySelector('.waking')?.remove();
    for (const [way, what] of typed) {
      const field = document.querySelector(way);
      if (!field) continue;
      if (what.files) field.files = what.files; else if ('checked' in what) field.checked = what.checked; else field.value = what.value;
      for (const kind of ['input', 'change']) field.dispatchEvent(new Event(kind, { bubbles: true }));
    }
    const place = focused && document.querySelector(focused);
    if (place && [document.body, null].includes(document.activeElement)) place.focus({ preventScroll: true });
    const target = pressed && document.querySelector(pressed.way);
    if (!target || (pressed.words && pressed.words !== wordsOf(target))) return;
    if (pressed.isForm) target.requestSubmit(); else target.click();
  }

  const listeners = [['click', press], ['submit', send], ['input', type], ['change', type], ['focusin', focus]];
  for (const [kind, listener] of listeners) document.addEventListener(kind, listener, true);
  const watch = new MutationObserver(wake);
  watch.observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-alive'] });
})();
