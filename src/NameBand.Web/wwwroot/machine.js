// At the machine: one hooping at a time, in large type. Everything comes from the server; what is said goes to the sewing log.

import { many, parts, t } from './said.js';
import { lengthInWords } from './strip/colours.js';
import { HoopPicture, fetchHooping } from './strip/hoop.js';
import { Keying } from './machine-keying.js';
import { Saying } from './machine-saying.js';
import { Naming } from './machine-naming.js';
import { Finishing } from './machine-finishing.js';

const lookEveryMs = 1500;
const lookSoonMs = 150;

const cautions = hooped => [
  t('Your machine’s manual, local rules and people trained for it come before anything here.'),
  `${t('Keep fingers, hair, sleeves and cords away from the needle and everything that moves.')} ${hooped
    ? t('The hoop moves by itself, and farther than the needle.') : t('Guide the cloth beside the foot, never before the needle.')}`,
  t('Switch the machine off to change a needle, to thread it, or to clear a jam.'),
  hooped ? t('Before each start see that the hoop can travel its whole field without hitting anything. Start slowly.') : t('Start slowly.'),
  t('A needle can break: wear glasses, and count the pieces before you go on. Stay with a machine that runs.'),
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
    this.naming = new Naming(this.nameBox, () => this.state, () => this.keying.key, () => this.#said(), isPart => this.#onward(isPart), () => this.#busy());
    this.finishing = new Finishing(this.columns.finish, () => this.#said());
    this.saying = new Saying(this.sayBox, () => this.state, () => this.hooping, () => this.#look(), () => this.#afterHooping(), () => this.#busy());
    this.#look();
    this.timer = setInterval(() => this.#look(), lookEveryMs);
    this.typed = () => this.#busy();
    root.addEventListener('input', this.typed);
    this.seen = () => this.#stayAwake();
    document.addEventListener('visibilitychange', this.seen);
    this.#stayAwake();
  }

  /** Hands that are at the cloth wake no screen; a browser that does not allow it, as over a network, lets it sleep. */
  async #stayAwake() {
    if (document.visibilityState !== 'visible' || this.awake?.released === false) return;
    try {
      this.awake = await navigator.wakeLock?.request('screen');
    } catch {
      this.awake = null; // Such as on a battery that is nearly empty.
    }
    this.root.toggleAttribute('data-awake', Boolean(this.awake));
    if (this.isGone) this.awake?.release();
  }

  dispose() {
    this.isGone = true;
    document.removeEventListener('visibilitychange', this.seen);
    this.root.removeEventListener('input', this.typed);
    this.awake?.release();
    clearInterval(this.timer);
    clearTimeout(this.soon);
    this.saying.dispose();
    this.naming.dispose();
    this.picture.dispose();
  }

  /** What is gone through one after the other: hoopings that have a needle path, then names that are typed or traced. */
  get station() { return this.stations?.[this.at] ?? null; }
  get isName() { return this.station?.key !== undefined; }
  get hooping() {
    const hoopings = this.state?.hoopings ?? [];
    return this.isName ? hoopings.find(h => h.number === this.keying.key.run) ?? null : hoopings[this.station?.hooping] ?? null;
  }

  #frame() {
    const part = (tag, data, more = {}) => el(tag, null, { data, ...more });
    this.head = part('h2', 'head', { tabIndex: -1 });
    this.left = part('p', 'left', { className: 'machine-left' });
    this.tonight = part('p', 'tonight', { className: 'machine-left' });
    this.problems = part('div', 'problems', { className: 'machine-problems' });
    this.problems.setAttribute('role', 'status');
    this.canvas = el('canvas', null, { className: 'hoop' });
    this.canvas.setAttribute('role', 'img');
    this.names = part('ul', 'names', { className: 'machine-names' });
    this.sayBox = part('div', 'say', { className: 'machine-say' });
    this.nameBox = part('div', 'say-name', { className: 'machine-say' });
    this.back = el('button', t('‹ back'), { type: 'button', data: 'back' });
    this.next = el('button', t('next ›'), { type: 'button', data: 'next' });
    this.go = el('select', null, { data: 'go' });
    this.go.setAttribute('aria-label', t('Go to'));
    this.back.addEventListener('click', () => this.#show(this.at - 1));
    this.next.addEventListener('click', () => this.#show(this.at + 1));
    this.go.addEventListener('change', () => this.#show(Number(this.go.value)));
    const way = el('nav', null, { className: 'machine-way' });
    way.setAttribute('aria-label', t('One after the other'));
    way.append(this.go, this.back, this.next);
    this.file = part('p', 'file', { className: 'machine-file' });
    this.marks = part('div', 'marks');
    this.watch = part('ul', 'watch');
    this.thread = part('dl', 'thread');
    this.follow = part('ul', 'follow');
    this.finish = part('div', 'finish');
    this.care = el('ul', null, { className: 'cautions' });
    const column = (title, ...more) => {
      const section = el('section');
      section.append(el('h3', title), ...more);
      return section;
    };
    this.columns = { marks: column(t('Marks'), this.marks), follow: column(t('How it is sewn'), this.follow), watch: column(t('Watch for'), this.watch), finish: column(t('When all is sewn'), this.finish) };
    const columns = el('div', null, { className: 'machine-columns' });
    columns.append(this.columns.follow, column(t('Thread and cloth'), this.thread), this.columns.watch, this.columns.finish, column(t('Take care'), this.care));
    this.keying = new Keying();
    this.body = el('div');
    const sight = el('div', null, { className: 'machine-sight' });
    sight.append(this.canvas, this.columns.marks, this.sayBox);
    this.columns.marks.className = 'machine-marks';
    this.body.append(this.names, sight, this.keying.box, this.nameBox, way, this.file, columns);
    const top = el('div', null, { className: 'machine-top' });
    top.append(this.head, this.left, this.tonight);
    this.root.replaceChildren(...(this.isLent ? [el('h1', t('At the machine'))] : []), top, this.problems, this.body);
  }

  async #look() {
    if (this.looking) return;
    this.looking = true;
    try {
      const answer = await fetch(`/machine/state?stamp=${encodeURIComponent(this.stamp)}`);
      if (answer.status === 200) this.#take(await answer.json());
      else if (answer.status === 403) {
        this.#lost(this.isLent ? t('This view was taken back. Ask for a new code at the worktable.')
          : t('The worktable was started again under a new address: open the one shown in its window.'));
      }
      if (answer.ok) this.#found();
    } catch {
      this.#lost(t('The worktable does not answer. Is its computer awake? What you said before is logged.'));
    } finally {
      this.looking = false;
    }
  }

  /** Something was written down: the marks after it may move, and are looked for at once. */
  #said() {
    this.hurry = Date.now() + 4000;
    this.#look();
    clearTimeout(this.soon);
    const again = () => {
      if (Date.now() > this.hurry) return;
      this.#look();
      this.soon = setTimeout(again, lookSoonMs);
    };
    this.soon = setTimeout(again, lookSoonMs);
  }

  /** Something is begun that would be gone if the page were loaded anew. */
  #busy() { this.root.toggleAttribute('data-busy', Boolean(this.saying?.isBusy || this.naming?.isBusy)); }

  /** To the next name that is not sewn, or to the next part of this one; false where there is none. */
  #onward(isPart) {
    const { all } = this.keying;
    const from = this.keying.at;
    if (isPart) {
      this.#show(this.at + 1);
      return true;
    }
    const order = all[from]?.order;
    const open = i => !all[i].sewn && all[i].order !== order;
    const next = [...all.keys()].find(i => i > from && open(i)) ?? [...all.keys()].find(open);
    if (next === undefined) return false;
    this.#show(this.stations.findIndex(s => s.key === next), false);
    return true;
  }

  /** To the next hooping that is not sewn; false where there is none. */
  #afterHooping() {
    const open = i => this.stations[i].hooping !== undefined && !this.state.hoopings[this.stations[i].hooping].sewn;
    const next = [...this.stations.keys()].find(i => i > this.at && open(i)) ?? [...this.stations.keys()].find(open);
    if (next === undefined) return false;
    this.#show(next, false);
    return true;
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
    const before = this.station, number = this.hooping?.number, key = this.keying.key;
    this.state = state;
    this.stamp = state.stamp;
    this.picture.inches = state.inches;
    const hoopings = state.hoopings ?? [];
    this.body.hidden = hoopings.length === 0;
    this.keying.take(state.keys);
    const keys = this.keying.all;
    this.stations = [...(state.hasPaths || keys.length === 0 ? hoopings.map((h, i) => ({ hooping: i })) : []), ...keys.map((k, i) => ({ key: i }))];
    const sewnIn = number => state.hooped ? t('hooping {0}', number) : t('run {0}', number);
    const isSewn = s => s.key === undefined ? hoopings[s.hooping].sewn : keys[s.key].sewn;
    this.go.replaceChildren(...this.stations.map((s, i) => new Option(
      s.key === undefined ? `${sewnIn(hoopings[s.hooping].number)}${hoopings[s.hooping].sewn ? ` ${t('✓ sewn')}` : hoopings[s.hooping].again ? ` ${t('again')}` : ''}` : this.keying.option(s.key), String(i))));
    this.care.replaceChildren(...cautions(state.hooped).map(c => el('li', c)));
    const same = !before ? -1 : before.key === undefined ? this.stations.findIndex(s => s.hooping !== undefined && hoopings[s.hooping].number === number)
      : this.stations.findIndex(s => s.key !== undefined && keys[s.key].order === key?.order && keys[s.key].part === key?.part);
    this.at = first || same < 0 ? Math.max(0, this.stations.findIndex(s => !isSewn(s))) : same;
    this.keying.at = this.station?.key ?? -1;
    this.#write();
  }

  get count() { return this.stations?.length ?? 0; }

  #show(at, isRead = true) {
    if (at < 0 || at >= this.count) return;
    this.at = at;
    this.keying.at = this.station.key ?? -1;
    this.saying.reset();
    this.naming.reset();
    this.#write();
    if (isRead) this.head.focus();
  }

  #write() {
    const { state, hooping } = this;
    this.#problems();
    if (!this.station) {
      this.head.textContent = state.laying ? t('Laying it out') : t('There is nothing to sew yet');
      this.left.textContent = this.tonight.textContent = '';
      return;
    }
    this.head.textContent = this.isName ? this.keying.heading : this.#headOf(hooping);
    this.left.textContent = this.#leftInWords();
    this.tonight.textContent = state.tonight ?? '';
    this.tonight.hidden = !state.tonight;
    this.go.value = String(this.at);
    this.back.disabled = this.at === 0;
    this.next.disabled = this.at === this.count - 1;
    this.columns.marks.hidden = this.columns.watch.hidden = !state.hooped || !hooping;
    this.columns.follow.hidden = (state.rules ?? []).length === 0;
    this.follow.replaceChildren(...(state.rules ?? []).map(f => el('li', f)));
    this.names.hidden = this.isName;
    this.keying.box.hidden = this.nameBox.hidden = !this.isName;
    this.sayBox.hidden = this.isName;
    this.columns.finish.hidden = !state.finish;
    this.finishing.write(state.finish);
    if (this.isName) {
      this.keying.write(state);
      this.naming.write();
    } else {
      this.saying.write();
    }
    if (hooping) {
      this.#names(hooping);
      this.#marks(hooping);
      this.watch.replaceChildren(...(hooping.watch.length > 0 ? hooping.watch : [state.left ? t('Nothing unusual.') : t('counting')]).map(w => el('li', w)));
    }
    this.#thread(hooping);
    this.#picture(hooping);
  }

  #headOf(hooping) {
    const { number, sewn, again } = hooping, all = this.state.hoopings.length;
    const place = this.state.hooped ? t('Hooping {0} of {1}', number, all) : t('Run {0} of {1}', number, all);
    return sewn ? t('{0}: sewn ✓', place) : again ? t('{0}: to be sewn again', place) : place;
  }

  #leftInWords() {
    const { state } = this;
    const time = state.left ? t('about {0} at the machine ({1})', state.left, state.leftRange) : t('counting');
    const byHand = state.leftByHand ? t('about {0} by hand', state.leftByHand) : t('the work by hand');
    const open = state.hasPaths ? state.hoopings.filter(h => !h.sewn).length : 0;
    const names = new Set(this.keying.all.filter(k => !k.sewn).map(k => k.order)).size;
    if (open + names === 0) {
      return state.hasPaths ? t('All hoopings are sewn; {0} is still ahead, from pressing to sewing down.', byHand)
        : t('All names are sewn; {0} is still ahead, from pressing to sewing down.', byHand);
    }
    const what = names === 0 ? String(open) : open === 0 ? many(names, 'One name', '{0} names') : t('{0} and {1}', open, many(names, '{0} name', '{0} names'));
    return t('{0} still to sew: {1}, and {2} up to the last stitch at the hem.', what, time, byHand);
  }

  #problems() {
    const { state } = this;
    const lines = (state?.problems ?? []).map(p => el('p', p, { className: 'machine-problem' }));
    const stale = {
      other: t('The needle path in the out folder is not the one shown here: the plan has changed since. Make the files again before you sew.'),
      missing: t('There is no needle path of this hooping in the out folder: the plan has changed since. Make the files again before you sew.'),
    }[this.made];
    if (stale && state.made && !this.isName && !this.hooping?.sewn) lines.push(el('p', stale, { className: 'machine-problem' }));
    if (state?.hoopings && !state.made && state.hasPaths) {
      const p = el('p', `${t('The files to sew from are not made yet.')} `, { className: 'machine-problem' });
      p.append(...(this.isLent ? [t('They are made at the worktable, under “print”.')]
        : parts('Make them under {0}; then what is sewn can be marked here.', el('a', t('print'), { href: '/print' }))));
      lines.push(p);
    }
    this.problems.replaceChildren(...lines);
    this.#file();
  }

  /** The needle path itself, where it is the one that is shown; nothing of it is lent. */
  #file() {
    const has = !this.isLent && !this.isName && this.state?.hasPaths && this.made === 'same' ? this.hooping : null;
    if (!has) {
      this.file.replaceChildren();
      return;
    }
    const name = `hooping-${String(has.number).padStart(3, '0')}.csv`;
    this.file.replaceChildren(el('a', t('save the needle path of this hooping'), { href: `/made/out/needle-paths/${name}`, download: name }));
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
    head.append(...[t('strip'), t('left mark'), t('right mark'), t('apart')].map(words => el('th', words, { scope: 'col' })));
    table.append(head);
    for (const strip of hooping.strips) {
      const row = el('tr');
      const which = [state.cloths > 1 && t('cloth {0}', hooping.cloth), strip.which, t('round {0}', strip.round)].filter(Boolean).join(', ');
      row.append(el('th', which, { scope: 'row' }), el('td', words(strip.left)), el('td', words(strip.right)), el('td', words(strip.apart)));
      table.append(row);
    }
    const line = words(Math.abs(state.markY)), isBelow = state.markY < 0;
    const where = state.curved
      ? isBelow ? t('Along the flat cloth from its cut left end, on its lower edge; on the line {0} below the middle of the strip.', line)
        : t('Along the flat cloth from its cut left end, on its lower edge; on the line {0} above the middle of the strip.', line)
      : isBelow ? t('Along the flat cloth from its cut left end; on the line {0} below the middle of the strip.', line)
        : t('Along the flat cloth from its cut left end; on the line {0} above the middle of the strip.', line);
    this.marks.replaceChildren(table, el('p', `${t('Mark {0}, plan {1}.', hooping.mark, state.plan)} ${where}`));
  }

  #thread(hooping) {
    const { state } = this;
    const minutes = hooping?.minutes > 0 ? t('{0} min', Math.max(1, Math.round(hooping.minutes))) : '';
    const takes = !hooping ? '' : !state.left ? t('counting') : state.hasPaths && !this.isName ? t('{0} stitches, {1}', hooping.stitches, minutes) : minutes;
    const facts = [
      [t('marks'), state.marksSewn && !this.isName ? t('thread in the cloth’s colour') : ''],
      [state.hasPaths && !this.isName ? t('names') : t('thread'), state.thread], [t('needle'), state.needle],
      [t('cloth'), `${state.fabric}, ${state.backing}`],
      [t('letters'), this.keying.key?.keyed ? t('{0}, the machine’s own', state.height) : `${state.height}, ${state.face}`],
      [state.hooped ? t('this hooping') : t('this run'), takes],
    ].filter(([, how]) => how);
    this.thread.replaceChildren(...facts.map(([what, how]) => {
      const pair = el('div');
      pair.append(el('dt', what), el('dd', how));
      return pair;
    }));
  }

  async #picture(hooping) {
    const hasPath = this.state.hasPaths && !this.isName;
    const key = `${this.state.layout}/${hooping?.number ?? 0}`;
    this.canvas.hidden = !hasPath;
    if (!hasPath) {
      this.pictured = '';
      this.root.dataset.pictured = String(hooping?.number ?? 0);
      return;
    }
    if (this.pictured === key) {
      await this.#seeMade(key);
      return;
    }
    this.pictured = key;
    this.made = null;
    const names = hooping.strips.flatMap(s => s.names).map(n => n[1]).join(', ');
    this.canvas.setAttribute('aria-label', t('Hooping {0} as it lies in the hoop: {1}', hooping.number, names));
    const ready = this.ready?.key === key ? this.ready.got : null;
    const got = await (ready ?? fetchHooping(this.state.layout, hooping.number)).catch(() => null); // The line was cut: asked again with the next look.
    if (this.pictured !== key) return;
    if (!got) { this.pictured = ''; this.stamp = ''; return; }
    this.picture.take(got);
    this.root.dataset.pictured = String(hooping.number);
    this.#fetchNext();
    await this.#seeMade(key);
  }

  /** The next one stands at once when this one is done. */
  #fetchNext() {
    const next = this.stations.slice(this.at + 1).find(s => s.hooping !== undefined);
    const number = next && this.state.hoopings[next.hooping].number;
    if (!number) return;
    const key = `${this.state.layout}/${number}`;
    if (this.ready?.key === key) return;
    const got = fetchHooping(this.state.layout, number);
    got.catch(() => { if (this.ready?.key === key) this.ready = null; });
    this.ready = { key, got };
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
