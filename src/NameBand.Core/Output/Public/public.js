'use strict';
(() => {
  const data = JSON.parse(document.getElementById('data').textContent);
  const at = id => document.getElementById(id);
  const plain = text => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().trim();
  const known = data.names.map(name => {
    const key = plain(name.t);
    return { name, key, words: key.split(/[^\p{L}\p{N}]+/u) };
  });
  const most = data.most;
  const says = data.says;
  const language = document.documentElement.lang;
  const rules = new Intl.PluralRules(language);
  const filled = (text, parts) => text.replace(/\{(\w+)\}/g, (all, key) => parts[key] ?? all);
  const counted = (forms, n) => filled(forms[rules.select(n)] ?? Object.values(forms).at(-1), {
    n: n.toLocaleString(language), most: most.toLocaleString(language),
  });
  let shown = null;

  function matches(typed) {
    const key = plain(typed);
    if (!key) return [];
    const rank = k => k.key.startsWith(key) ? 0 : k.words.some(w => w.startsWith(key)) ? 1 : k.key.includes(key) ? 2 : 3;
    return known.map(k => [rank(k), k.name]).filter(r => r[0] < 3).sort((a, b) => a[0] - b[0]).map(r => r[1]);
  }

  function bdi(text) {
    const part = document.createElement('bdi');
    part.textContent = text;
    return part;
  }

  function look() {
    const all = matches(at('letters').value);
    at('found').replaceChildren(...all.slice(0, most).map(name => {
      const item = document.createElement('li');
      const button = document.createElement('button');
      const place = document.createElement('span');
      place.textContent = name.p;
      button.type = 'button';
      button.append(bdi(name.t), ' ', place);
      button.addEventListener('click', () => go(name));
      item.append(button);
      return item;
    }));
    at('said').textContent = !plain(at('letters').value) ? ''
      : all.length === 0 ? says.none
      : counted(all.length > most ? says.more : says.found, all.length);
  }

  function go(name) {
    if (location.hash === '#n' + name.n) show(name);
    else location.hash = 'n' + name.n;
  }

  function show(name) {
    shown = name;
    at('name').hidden = false;
    at('who').replaceChildren(bdi(name.t));
    at('where').textContent = filled(says.where, { place: name.p });
    at('sewn').setAttribute('aria-label', filled(says.sewn, { name: name.t }));
    mark(name);
    draw(name);
    photograph(name);
    at('who').focus();
    at('name').scrollIntoView({ block: 'nearest' });
  }

  function mark(name) {
    const line = at('r' + name.r).dataset;
    const spot = at('spot');
    if (line.turn === undefined) {
      const x = part => Number(line.left) + Number(line.wide) * Math.min(1, Math.max(0, part));
      spot.setAttribute('d', `M${x(name.a)} ${line.y}H${Math.max(x(name.b), x(name.a) + 0.1)}`);
      return;
    }
    const radius = Number(at('r' + name.r).getAttribute('r'));
    const turn = Number(line.turn);
    const place = part => {
      const angle = Math.PI + turn * 2 * Math.PI * (part - Number(line.front));
      return `${(100 + radius * Math.sin(angle)).toFixed(2)} ${(100 - radius * Math.cos(angle)).toFixed(2)}`;
    };
    const end = Math.max(name.b, name.a + 0.001);
    spot.setAttribute('d', `M${place(name.a)}A${radius} ${radius} 0 ${end - name.a > 0.5 ? 1 : 0} ${turn > 0 ? 1 : 0} ${place(end)}`);
  }

  function thread(name) {
    const bytes = Uint8Array.from(atob(name.s), c => c.charCodeAt(0));
    const far = new DataView(bytes.buffer);
    const path = new Path2D();
    let x = 0, y = 0;
    path.moveTo(0, 0);
    for (let i = 0; i < bytes.length;) {
      const isFar = bytes[i] === 128;
      x += isFar ? far.getInt16(i + 2, true) : far.getInt8(i);
      y += isFar ? far.getInt16(i + 4, true) : far.getInt8(i + 1);
      if (isFar && bytes[i + 1] === 0) path.moveTo(x, y);
      else path.lineTo(x, y);
      i += isFar ? 6 : 2;
    }
    return path;
  }

  function draw(name) {
    const canvas = at('sewn');
    const wide = canvas.clientWidth || 320;
    const high = wide * 0.36;
    const dense = window.devicePixelRatio || 1;
    canvas.width = Math.round(wide * dense);
    canvas.height = Math.round(high * dense);
    const to = canvas.getContext('2d');
    const scale = Math.min(canvas.width * 0.88 / name.w, canvas.height * 0.96 / data.high);
    const strip = data.high * scale;
    to.fillStyle = data.cloth;
    to.fillRect(0, 0, canvas.width, canvas.height);
    to.fillStyle = 'rgba(70, 58, 34, 0.22)';
    to.fillRect(0, 0, canvas.width, (canvas.height - strip) / 2);
    to.fillRect(0, (canvas.height + strip) / 2, canvas.width, (canvas.height - strip) / 2);
    to.translate(canvas.width / 2 + (name.x - name.w / 2) * scale, canvas.height / 2 - name.y * scale);
    to.scale(scale * data.unit, scale * data.unit);
    to.lineCap = 'butt';
    to.lineJoin = 'bevel';
    const path = thread(name);
    for (const [colour, part] of [[name.d, 1], [name.c, data.lit]]) {
      to.strokeStyle = colour;
      to.lineWidth = data.thread * part / data.unit;
      to.stroke(path);
    }
  }

  function photograph(name) {
    at('photos').replaceChildren(...data.photos.filter(p => p.n.includes(name.n)).map(p => {
      const picture = document.createElement('img');
      picture.src = 'data:image/jpeg;base64,' + p.j;
      picture.width = p.w;
      picture.height = p.h;
      picture.alt = filled(p.part ? says.photoOfPart : says.photo, { name: name.t });
      return picture;
    }));
  }

  function asked() {
    const name = data.names.find(n => location.hash === '#n' + n.n);
    if (name) show(name);
  }

  at('letters').addEventListener('input', look);
  at('ask').addEventListener('submit', event => {
    event.preventDefault();
    const first = matches(at('letters').value)[0];
    if (first) go(first);
  });
  addEventListener('hashchange', asked);
  addEventListener('resize', () => { if (shown) draw(shown); });
  asked();
})();
