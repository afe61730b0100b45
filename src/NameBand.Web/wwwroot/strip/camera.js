// Which part of the strips is seen: pixels per mm, the place at the left edge, and how far the rounds are pushed up.

export const tapePx = 40;
const belowPx = 40;      // brackets of the hoopings
const betweenPx = 10;
const leastClothPx = 18;
const marginPx = 24;
export const closestPxPerMm = 90;

export class Camera {
  constructor() {
    this.width = 800;
    this.height = 300;
    this.scale = 1;
    this.left = 0;
    this.up = 0;
    this.only = -1;      // index of the only round to show; -1: all
  }

  take(map) {
    this.map = map;
    this.longest = Math.max(1, ...map.rounds.map(r => r.length));
    if (this.only >= map.rounds.length) this.only = -1;
    this.clamp();
  }

  /** Indices of the rounds on the table from top to bottom: they count upward from the hem. */
  get rounds() {
    return this.only >= 0 ? [this.only] : this.map.rounds.map((_, i) => i).reverse();
  }

  get widest() { return this.longest + 2 * marginPx / this.scale; }
  get leastScale() { return (this.width - 2 * marginPx) / this.longest; }
  get clothPx() { return Math.max(leastClothPx, this.map.cut * this.scale); }
  get lanePx() { return this.clothPx + belowPx + betweenPx; }
  get right() { return this.left + this.width / this.scale; }

  /** Pixels for a mm across the strip: at a far look the strip is drawn wider than it is, so that it can be seen. */
  get across() { return Math.max(this.scale, leastClothPx / this.map.cut); }

  x(mm) { return (mm - this.left) * this.scale; }
  mm(px) { return this.left + px / this.scale; }

  centre(lane) {
    const all = this.rounds.length * this.lanePx;
    const room = this.height - tapePx;
    const top = tapePx + (all < room ? (room - all) / 2 : -this.up);
    return top + betweenPx / 2 + lane * this.lanePx + this.clothPx / 2;
  }

  clamp() {
    this.scale = Math.min(closestPxPerMm, Math.max(this.leastScale, this.scale));
    const margin = marginPx / this.scale;
    this.left = Math.min(Math.max(this.left, -margin), Math.max(-margin, this.longest + margin - this.width / this.scale));
    const over = this.rounds.length * this.lanePx - (this.height - tapePx);
    this.up = over > 0 ? Math.min(Math.max(this.up, 0), over) : 0;
  }

  /** The lane nearest to a height on the canvas, and how far from its centre line, in mm. */
  laneAt(py) {
    let best = 0;
    for (let i = 1; i < this.rounds.length; i++) {
      if (Math.abs(this.centre(i) - py) < Math.abs(this.centre(best) - py)) best = i;
    }
    return { lane: best, off: (py - this.centre(best)) / this.across };
  }

  /** Zooms about a place on the canvas, which stays where it is. */
  zoom(factor, px = this.width / 2, py = tapePx + (this.height - tapePx) / 2) {
    const mm = this.mm(px);
    const { lane, off } = this.laneAt(py);
    this.scale = Math.min(closestPxPerMm, Math.max(this.leastScale, this.scale * factor));
    this.left = mm - px / this.scale;
    this.up += this.centre(lane) + off * this.across - py;
    this.clamp();
  }

  /** Zooms about the middle; where that lies beside the strips, the nearest one comes to the middle. */
  zoomMiddle(factor) {
    const middle = tapePx + (this.height - tapePx) / 2;
    const { lane, off } = this.laneAt(middle);
    this.zoom(factor);
    if (Math.abs(off) > this.map.finished / 2) {
      this.up += this.centre(lane) - middle;
      this.clamp();
    }
  }

  whole() {
    this.scale = 0;
    this.up = 0;
    this.clamp();
    this.left = -marginPx / this.scale;
  }

  /** Where the camera has to be to show a name, at a scale at which it fills a good part of the table or closer. */
  toName(name, scale) {
    const to = Object.assign(new Camera(), this);
    if (to.only >= 0 && to.only !== name.round) to.only = name.round;
    to.scale = Math.min(closestPxPerMm, Math.max(this.leastScale, scale));
    to.left = name.start + name.width / 2 - this.width / to.scale / 2;
    to.up = 0;
    const lane = to.rounds.indexOf(name.round);
    to.up = to.centre(lane) - (tapePx + (to.height - tapePx) / 2) - name.base * to.scale / 2 + belowPx / 4;
    to.clamp();
    return to;
  }
}
