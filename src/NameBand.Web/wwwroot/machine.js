// At the machine: one hooping at a time, in large type. Everything comes from the server; what is said goes to the sewing log.

import { lengthInWords } from './strip/colours.js';
import { HoopPicture, fetchHooping } from './strip/hoop.js';
import { Keying } from './machine-keying.js';
import { Saying } from './machine-saying.js';

const lookEveryMs = 1500;

const cautions = hooped => [
  'Your machine’s manual, local rules and people trained for it come before anything here.',
  `Keep fingers, hair, sleeves and cords away from the needle and everything that moves. ${hooped ? 'The hoop moves by itself, and farther than the needle.' : 'Guide the cloth beside the foot, never before the needle.'}`,
  'Switch the machine off to change a needle, to thread it, or to clear a jam.',
  hooped ? 'Before each start see that the hoop can travel its whole field without hitting anything. Start slowly.' : 'Start slowly.',
  'A needle can break: wear glasses, and count the pieces before you go on. Stay with a machine that runs.',
];

export function el(tag, text, more = {}) {
  const e = document.createElement(tag);
  if (text !== undefined && text !== null) e.textContent = text;
  const { data, ...rest } = more;
  Object.assign(e, rest);
  if (data) e.dataset.part = data;
  return e;
}

class Machine {
  constructor(root) {
    this.root = root;
    this.at = -1;
    this.stamp = '';
    this.isLent = root.hasAttribute('data-lent');
    this.#frame();
    this.picture = new HoopPicture(this.canvas, false);
    this.saying = new Saying(this.sayBox, () => this.state, () => this.hooping, (deed, isHere) => { this.#look(); if (deed === 'sewn' && isHere && !this.next.disabled) this.next.focus(); });
    this.#look();
    this.timer = setInterval(() => this.#look(), lookEveryMs);
  }

  dispose() {
    clearInterval(this.timer);
    this.saying.dispose();
    this.picture.dispose();
  }

  get hooping() { return this.state?.hoopings?.[this.at] ?? null; }

  #frame() {
    const part = (tag, data, more = {}) => el(tag, null, { data, ...more });
    this.head = part('h2', 'head', { tabIndex: -1 });
    this.left = part('p', 'left', { className: 'machine-left' });
    this.problems = part('div', 'problems', { className: 'machine-problems' });
    this.problems.setAttribute('role', 'status');
    this.canvas = el('canvas', null, { className: 'hoop' });
    this.canvas.setAttribute('role', 'img');
    this.names = part('ul', 'names', { className: 'machine-names' });
    this.sayBox = part('div', 'say', { className: 'machine-say' });
    this.back = el('button', '‹ back', { type: 'button', data: 'back' });
    this.next = el('button', 'next ›', { type: 'button', data: 'next' });
    this.go = el('select', null, { data: 'go' });
    this.go.setAttribute('aria-label', 'Go to');
    this.back.addEventListener('click', () => this.#show(this.place - 1));
    this.next.addEventListener('click', () => this.#show(this.place + 1));
    this.go.addEventListener('change', () => this.#show(Number(this.go.value)));
    const way = el('nav', null, { className: 'machine-way' });
    way.setAttribute('aria-label', 'One after the other');
    way.append(this.back, this.go, this.next);
    this.file = part('p', 'file', { className: 'machine-file' });
    this.marks = part('div', 'marks');
    this.watch = part('ul', 'watch');
    this.thread = part('dl', 'thread');
    this.follow = part('ul', 'follow');
    this.care = el('ul', null, { className: 'cautions' });
    const column = (title, ...more) => {
      const section = el('section');
      section.append(el('h3', title), ...more);
      return section;
    };
    this.columns = { marks: column('Marks', this.marks), follow: column('How it is sewn', this.follow), watch: column('Watch for', this.watch) };
    const columns = el('div', null, { className: 'machine-columns' });
    columns.append(this.columns.marks, this.columns.follow, column('Thread and cloth', this.thread), this.columns.watch, column('Take care', this.care));
    this.keying = new Keying();
    this.body = el('div');
    this.body.append(this.names, this.canvas, this.keying.box, way, this.sayBox, this.file, columns);
    const top = el('div', null, { className: 'machine-top' });
    top.append(this.head, this.left);
    this.root.replaceChildren(...(this.isLent ? [el('h1', 'At the machine')] : []), top, this.problems, this.body);
  }

  async #look() {
    if (this.looking) return;
    this.looking = true;
    try {
      const answer = await fetch(`/machine/state?stamp=${encodeURIComponent(this.stamp)}`);
      if (answer.status === 200) this.#take(await answer.json());
      else if (answer.status === 403) {
        this.#lost(this.isLent ? 'This view was taken back. Ask for a new code at the worktable.'
          : 'The worktable was started again under a new address: open the one that stands in its window.');
      }
      if (answer.ok) this.#found();
    } catch {
      this.#lost('The worktable does not answer. Is its computer awake? What you said before is written down.');
    } finally {
      this.looking = false;
    }
  }

  #lost(words) {
    this.root.dataset.lost = '';
    this.problems.replaceChildren(el('p', words, { className: 'machine-problem' }));
  }

  #found() {
    if ('lost' in this.root.dataset) {
      delete this.root.dataset.lost;
      this.#problems();
    }
  }

  #take(state) {
    const first = !this.state?.hoopings;
    const number = this.hooping?.number;
    this.state = state;
    this.stamp = state.stamp;
    this.picture.inches = state.inches;
    const hoopings = state.hoopings ?? [];
    this.body.hidden = hoopings.length === 0;
    this.keying.take(state.keys);
    const sewnIn = state.hooped ? 'hooping' : 'run';
    this.go.replaceChildren(...(state.keys ? this.keying.options()
      : hoopings.map((h, i) => new Option(`${sewnIn} ${h.number}${h.sewn ? ' ✓ sewn' : h.again ? ' again' : ''}`, String(i)))));
    this.care.replaceChildren(...cautions(state.hooped).map(c => el('li', c)));
    const same = hoopings.findIndex(h => h.number === number);
    const toSew = hoopings.findIndex(h => !h.sewn);
    this.at = first || same < 0 ? Math.max(0, toSew) : same;
    this.#write();
  }

  /** What is gone through one after the other: pieces that are keyed in, or hoopings. */
  get count() { return this.state?.keys?.length ?? this.state?.hoopings?.length ?? 0; }
  get place() { return this.state?.keys ? this.keying.at : this.at; }

  #show(at) {
    if (at < 0 || at >= this.count) return;
    if (this.state.keys) {
      this.keying.at = at;
      this.at = Math.max(0, this.state.hoopings.findIndex(h => h.number === this.keying.key.run));
    } else {
      this.at = at;
    }
    this.saying.reset();
    this.#write();
    this.head.focus();
  }

  #write() {
    const { state, hooping } = this;
    this.#problems();
    if (!hooping) {
      this.head.textContent = state.laying ? 'Laying it out' : 'There is nothing to sew yet';
      this.left.textContent = '';
      return;
    }
    const sewnIn = state.hooped ? 'Hooping' : 'Run';
    this.head.textContent = state.keys ? this.keying.heading
      : `${sewnIn} ${hooping.number} of ${state.hoopings.length}${hooping.sewn ? ': sewn ✓' : hooping.again ? ': to be sewn again' : ''}`;
    this.left.textContent = this.#leftInWords();
    this.go.value = String(this.place);
    this.back.disabled = this.place === 0;
    this.next.disabled = this.place === this.count - 1;
    this.columns.marks.hidden = !state.hooped;
    this.columns.watch.hidden = !state.hooped;
    const how = state.rules ?? state.follow ?? [];
    this.columns.follow.hidden = how.length === 0;
    this.follow.replaceChildren(...how.map(f => el('li', f)));
    this.names.hidden = Boolean(state.keys);
    this.#names(hooping);
    this.keying.write(state);
    this.#marks(hooping);
    this.#thread(hooping);
    this.watch.replaceChildren(...(hooping.watch.length > 0 ? hooping.watch : [state.left ? 'Nothing out of the common.' : 'counting']).map(w => el('li', w)));
    this.saying.write();
    this.#picture(hooping);
  }

  #leftInWords() {
    const { state } = this;
    const time = state.left ? `about ${state.left} at the machine (${state.leftRange})` : 'counting';
    if (!state.hasPaths) return `In all: ${time}.`;
    const open = state.hoopings.filter(h => !h.sewn).length;
    const byHand = state.leftByHand ? `about ${state.leftByHand} by hand` : 'the work by hand';
    return open === 0 ? `All hoopings are sewn; ${byHand} is still ahead, from pressing to sewing down.`
      : `${open} still to sew: ${time}, and ${byHand} up to the last stitch at the hem.`;
  }

  #problems() {
    const { state } = this;
    const lines = (state?.problems ?? []).map(p => el('p', p, { className: 'machine-problem' }));
    const stale = { other: 'The needle path in the out folder is not the one shown here', missing: 'There is no needle path of this hooping in the out folder' }[this.made];
    if (stale && state.made && !this.hooping?.sewn) lines.push(el('p', `${stale}: the plan has changed since. Make the files anew before you sew.`, { className: 'machine-problem' }));
    if (state?.hoopings && !state.made && state.hasPaths) {
      const p = el('p', 'The files to sew from are not made yet. ', { className: 'machine-problem' });
      p.append(...(this.isLent ? ['They are made at the worktable, under “print”.'] : ['Make them under ', el('a', 'print', { href: '/print' }), '; then what is sewn can be marked here.']));
      lines.push(p);
    }
    this.problems.replaceChildren(...lines);
    this.#file();
  }

  /** The needle path itself, where it is the one that is shown; nothing of it is lent. */
  #file() {
    const has = !this.isLent && this.state?.hasPaths && this.made === 'same' && this.hooping;
    if (!has) {
      this.file.replaceChildren();
      return;
    }
    const name = `hooping-${String(has.number).padStart(3, '0')}.csv`;
    this.file.replaceChildren('needle path of this hooping: ', el('a', name, { href: `/made/out/needle-paths/${name}`, download: name }));
  }

  #names(hooping) {
    this.names.replaceChildren(...hooping.strips.flatMap(s => s.names).map(([order, text]) => {
      const item = el('li');
      item.append(el('span', String(order), { className: 'number' }), ' ', el('bdi', text));
      return item;
    }));
  }

  #marks(hooping) {
    const { state } = this;
    const words = mm => lengthInWords(mm, state.inches, true);
    const table = el('table');
    const head = el('tr');
    head.append(...['strip', 'left mark', 'right mark', 'apart'].map(t => el('th', t, { scope: 'col' })));
    table.append(head);
    for (const strip of hooping.strips) {
      const row = el('tr');
      row.append(el('th', `${state.cloths > 1 ? `cloth ${hooping.cloth}, ` : ''}${strip.which ? `${strip.which}, ` : ''}round ${strip.round}`, { scope: 'row' }), el('td', words(strip.left)), el('td', words(strip.right)), el('td', words(strip.apart)));
      table.append(row);
    }
    const where = `Mark ${hooping.mark}, plan ${state.plan}. Along the flat cloth from its cut left end${state.curved ? ', on its lower edge' : ''}; on the line ${words(Math.abs(state.markY))} ${state.markY < 0 ? 'below' : 'above'} the middle of the strip.`;
    this.marks.replaceChildren(table, el('p', where));
  }

  #thread(hooping) {
    const { state } = this;
    const minutes = hooping.minutes > 0 ? `${Math.max(1, Math.round(hooping.minutes))} min` : '';
    const takes = !state.left ? 'counting' : state.hasPaths ? `${hooping.stitches} stitches, ${minutes}` : minutes;
    const facts = [
      ['marks', state.hasPaths ? 'thread in the cloth’s colour' : ''], [state.hasPaths ? 'names' : 'thread', state.thread], ['needle', state.needle],
      ['cloth', `${state.fabric}, ${state.backing}`], ['letters', state.keys ? `${state.height}, the machine’s own` : `${state.height}, ${state.face}`],
      [state.hooped ? 'this hooping' : 'this run', takes],
    ].filter(([, how]) => how);
    this.thread.replaceChildren(...facts.map(([what, how]) => {
      const pair = el('div');
      pair.append(el('dt', what), el('dd', how));
      return pair;
    }));
  }

  async #picture(hooping) {
    const key = `${this.state.layout}/${hooping.number}`;
    if (this.pictured === key) {
      await this.#seeMade(key);
      return;
    }
    this.canvas.hidden = !this.state.hasPaths;
    if (!this.state.hasPaths) {
      this.pictured = key;
      this.root.dataset.pictured = String(hooping.number);
      return;
    }
    this.pictured = key;
    this.made = null;
    const names = hooping.strips.flatMap(s => s.names).map(n => n[1]).join(', ');
    this.canvas.setAttribute('aria-label', `Hooping ${hooping.number} as it lies in the hoop: ${names}`);
    const got = await fetchHooping(this.state.layout, hooping.number).catch(() => null); // The line was cut: asked again with the next look.
    if (this.pictured !== key) return;
    if (!got) { this.pictured = ''; this.stamp = ''; return; }
    this.picture.take(got);
    this.root.dataset.pictured = String(hooping.number);
    await this.#seeMade(key);
  }

  /** Whether the needle path in the out folder is that of the picture: asked again whenever something changed. */
  async #seeMade(key) {
    if (!this.state.hasPaths) return;
    try {
      const answer = await fetch(`/machine/made/${key}`);
      if (answer.status !== 200) return;
      const { made } = await answer.json();
      if (this.pictured !== key) return;
      this.made = made;
      this.#problems();
    } catch {
      this.stamp = ''; // The line was cut: asked again with the next look.
    }
  }
}

export function begin(root) {
  return new Machine(root);
}
