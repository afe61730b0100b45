// The garment as a flat drawing, from the front and from the back: where the browser cannot draw in depth.

export class Hanging {
  constructor(box, svg, data, colours, kept, drawn) {
    const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    Object.assign(this, { box, data, drawn, text: svg, drawing: document.importNode(drawing, true) });
    this.drawing.setAttribute('aria-hidden', 'true');
    box.replaceChildren(this.drawing);
    this.says = this.drawing.getAttribute('data-says') ?? '';
    this.isOutside = this.drawing.getAttribute('data-side') !== 'inside';
    this.sewn = new Set([...this.drawing.querySelectorAll('[data-sewn]')].map(p => Number(p.dataset.name)));
  }

  get kept() { return {}; }

  dispose() { this.box.replaceChildren(); }
  draw() { }
  resize() { }
  show() { }
  face() { }

  mark(name) {
    this.drawn();
    for (const path of this.drawing.querySelectorAll('.pressed')) path.classList.remove('pressed');
    if (name) for (const path of this.drawing.querySelectorAll(`[data-name="${name.index}"]`)) path.classList.add('pressed');
  }

  /** The name nearest to a place: what is drawn of one is often thinner than a finger. */
  at(x, y) {
    let best = null, least = 24;
    for (const path of this.drawing.querySelectorAll('[data-name]')) {
      const r = path.getBoundingClientRect();
      const away = Math.hypot(Math.max(r.left - x, 0, x - r.right), Math.max(r.top - y, 0, y - r.bottom));
      if (away < least) { least = away; best = Number(path.dataset.name); }
    }
    return best === null ? null : this.data.names.find(n => n.index === best) ?? null;
  }

  /** Where in the box a name is seen. */
  spot(name) {
    const path = this.drawing.querySelector(`[data-name="${name.index}"]`), box = this.box.parentElement.getBoundingClientRect();
    const r = path?.getBoundingClientRect();
    return r ? { x: r.left + r.width / 2 - box.left, y: r.top - box.top } : null;
  }

  inFront() { return this.data.names[0] ?? null; }

  async picture() {
    const picture = new Image(), canvas = document.createElement('canvas'), g = canvas.getContext('2d');
    const url = URL.createObjectURL(new Blob([this.text], { type: 'image/svg+xml' }));
    try {
      picture.src = url;
      await picture.decode();
      canvas.width = 2000;
      canvas.height = Math.round(2000 * this.drawing.viewBox.baseVal.height / this.drawing.viewBox.baseVal.width);
      g.fillStyle = '#f5f0e4';
      g.fillRect(0, 0, canvas.width, canvas.height);
      g.drawImage(picture, 0, 0, canvas.width, canvas.height);
      return await new Promise(done => canvas.toBlob(done, 'image/png'));
    } finally {
      URL.revokeObjectURL(url);
    }
  }
}
