// Which part of the strips is seen: pixels per mm, the place at the left edge, and how far the rounds are pushed up.

export const tapePx = 40;
const belowPx = 40;      // brackets of the hoopings
const betweenPx = 10;
const leastClothPx = 18;
const marginPx = 24;
const closestPxPerMm = 90;

// A curved strip hangs as it is cut as long as not too much of it is seen; from farther off it is drawn straight.
const fullBendRad = 0.5;
const noBendRad = 1;

export class Camera {
  constructor() {
    this.width = 800;
    this.height = 300;
    this.scale = 1;
    this.left = 0;
    this.up = 0;
    this.only = -1;      // index of the only round to show; -1: all
    this.shown = null;   // what `rounds` came to last
  }

  take(map) {
    this.map = map;
    this.longest = Math.max(1, ...map.rounds.map(r => r.length));
    this.isCurved = map.rounds.some(r => r.curve);
    if (this.only >= map.rounds.length) this.only = -1;
    this.clamp();
  }

  /** Indices of the rounds on the table from top to bottom: they count upward from the hem. */
  get rounds() {
    // Asked for at every corner of all that is drawn.
    if (this.shown?.map !== this.map || this.shown.only !== this.only) {
      const rounds = this.only >= 0 ? [this.only] : this.map.rounds.map((_, i) => i).reverse();
      this.shown = { map: this.map, only: this.only, rounds };
    }
    return this.shown.rounds;
  }

  get widest() { return this.longest + 2 * marginPx / this.scale; }
  get leastScale() { return (this.width - 2 * marginPx) / this.longest; }
  get clothPx() { return Math.max(leastClothPx, this.map.cut * this.scale); }
  get lanePx() { return this.clothPx + belowPx + betweenPx + this.sagPx; }
  get right() { return this.left + this.width / this.scale; }

  /** Pixels for a mm across the strip: at a far look the strip is drawn wider than it is, so that it can be seen. */
  get across() { return Math.max(this.scale, leastClothPx / this.map.cut); }

  x(mm) { return (mm - this.left) * this.scale; }
  mm(px) { return this.left + px / this.scale; }
  get middle() { return this.mm(this.width / 2); }

  /** Height of a lane's centre line at the middle of the table. */
  centre(lane) {
    const all = this.rounds.length * this.lanePx;
    const room = this.height - tapePx;
    const top = tapePx + (all < room ? (room - all) / 2 : -this.up);
    const hangs = this.arc(lane)?.sign > 0 ? this.sagPx : 0;
    return top + betweenPx / 2 + lane * this.lanePx + this.clothPx / 2 + hangs;
  }

  /** The arc of a lane's strip about the middle of the table; null where it is drawn straight. */
  arc(lane) {
    if (!this.isCurved) return null;
    const curve = this.map.rounds[this.rounds[lane]]?.curve;
    if (!curve) return null;
    const half = this.width / 2 / this.scale / curve.radius;
    const bend = Math.min(1, Math.max(0, (noBendRad - half) / (noBendRad - fullBendRad)));
    if (bend < 0.02) return null;
    const radius = curve.radius / bend;
    return { radius, centre: radius - (curve.radius - curve.centre), sign: curve.above ? 1 : -1 };
  }

  /** How far the strips on the table rise or hang from its middle to its sides. */
  get sagPx() {
    if (!this.isCurved) return 0;
    let sag = 0;
    for (let lane = 0; lane < this.rounds.length; lane++) {
      const arc = this.arc(lane);
      if (arc) sag = Math.max(sag, arc.radius * (1 - Math.cos(this.width / 2 / this.scale / arc.radius)) * this.scale);
    }
    return sag;
  }

  /** A place on a strip, along it and above its centre line in mm, on the canvas; and the angle at which it stands there. */
  at(lane, along, above = 0) {
    const arc = this.arc(lane), y = this.centre(lane);
    if (!arc) return [this.x(along), y - above * this.across, 0];
    const angle = (along - this.middle) / arc.radius;
    const radius = arc.centre - arc.sign * above * this.across / this.scale;
    return [this.width / 2 + radius * Math.sin(angle) * this.scale, y - arc.sign * (arc.centre - radius * Math.cos(angle)) * this.scale, -arc.sign * angle];
  }

  /** The reverse: where on a lane's strip a place on the canvas lies. */
  on(lane, px, py) {
    const arc = this.arc(lane), down = this.centre(lane) - py;
    if (!arc) return { along: this.mm(px), above: down / this.across };
    const x = (px - this.width / 2) / this.scale, y = arc.centre - arc.sign * down / this.scale;
    return { along: this.middle + Math.atan2(x, y) * arc.radius, above: arc.sign * (arc.centre - Math.hypot(x, y)) * this.scale / this.across };
  }

  /** Where on the tape, which lies straight, a place of the strips is read. */
  onTape(mm) {
    const arc = this.arc(0);
    return arc ? this.width / 2 + arc.radius * Math.sin((mm - this.middle) / arc.radius) * this.scale : this.x(mm);
  }

  clamp() {
    this.scale = Math.min(closestPxPerMm, Math.max(this.leastScale, this.scale));
    const margin = marginPx / this.scale;
    this.left = Math.min(Math.max(this.left, -margin), Math.max(-margin, this.longest + margin - this.width / this.scale));
    const over = this.rounds.length * this.lanePx - (this.height - tapePx);
    this.up = over > 0 ? Math.min(Math.max(this.up, 0), over) : 0;
  }

  /** The lane whose strip is nearest to a place on the canvas, where on it the place lies, and how far below its centre line, in mm. */
  laneAt(py, px = this.width / 2) {
    let best = null;
    for (let lane = 0; lane < this.rounds.length; lane++) {
      const { along, above } = this.on(lane, px, py);
      if (!best || Math.abs(above) < Math.abs(best.off)) best = { lane, along, off: -above };
    }
    return best;
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
