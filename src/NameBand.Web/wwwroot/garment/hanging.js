// The garment in depth: where it is looked at from, what is pressed on it, and its picture.

import * as three from '../three/three.module.min.js';
import { t } from '../said.js';
import { Letters } from './letters.js';
import { forget, garmentOf, isStraight, liftMm, mmPerUnit, placeOf, plainColour } from './cloth.js';

const openRad = 0.5;         // of the camera, from top to bottom
const closest = 9;
const picturePx = 2000;
const restFactor = 1.7, restAfterMs = 140, mostPx = 3.2e6;
const lateMs = 19, coarsest = 0.5;
const tallest = 1.1, lowest = -0.35, firstTilt = 0.14;

export class Hanging {
  constructor(canvas, map, data, colours, kept, drawn) {
    Object.assign(this, { canvas, map, data, drawn, says: map.says, isOutside: map.outside, sewn: new Set(map.sewn) });
    Object.assign(this, { angle: 0, tilt: firstTilt, times: 1, isTurned: false, ...kept });
    this.style = getComputedStyle(document.documentElement);
    const own = name => this.style.getPropertyValue(name).trim();
    // A canvas has one renderer, whatever hangs there.
    this.renderer = canvas.renderer ??= new three.WebGLRenderer({ canvas, alpha: true, powerPreference: 'low-power' });
    this.renderer.outputColorSpace = three.LinearSRGBColorSpace;
    this.scene = new three.Scene();
    this.camera = new three.PerspectiveCamera(openRad * 180 / Math.PI, 1, 0.05, 500);
    this.letters = new Letters(data, colours, this.sewn, () => { this.parts.names.needsUpdate = true; this.draw(); });
    this.parts = garmentOf(map, data.map, this.letters.canvas, { garment: own('--garment'), cotton: colours.cotton });
    this.parts.sewnOn.material.uniforms.colour.value = plainColour(own('--garment')).multiplyScalar(1.25);
    this.scene.add(this.parts.whole);
    this.frameOf = new three.Mesh(new three.BufferGeometry(), new three.MeshBasicMaterial({ color: own('--strip-madder'), side: three.DoubleSide, polygonOffset: true, polygonOffsetFactor: -1, polygonOffsetUnits: -40 }));
    this.parts.whole.add(this.frameOf);
    this.#shadow();
    this.reach = Math.max(...map.body.map(l => isStraight(map) ? l.across / 2 : l.across + 1.15 * l.depth)) / mmPerUnit;
    this.tall = map.body[0].height / mmPerUnit + 0.4;
    this.low = (map.strips.reduce((s, t) => s + t.lower.height + t.upper.height, 0) / 2 / Math.max(1, map.strips.length)) / mmPerUnit;
    this.resize();
  }

  get otherSide() { return isStraight(this.map) ? t('other side') : t('inside'); }

  get kept() { const { angle, tilt, times, isTurned } = this; return { angle, tilt, times, isTurned }; }

  /** @param {boolean} isLast nothing is hung there any more. */
  dispose(isLast) {
    this.isGone = true;
    cancelAnimationFrame(this.frame);
    clearTimeout(this.resting);
    this.letters.dispose();
    forget(this.parts);
    if (!isLast) return;
    this.renderer.dispose();
    delete this.canvas.renderer;
  }

  /** Coarser while it moves, where that is needed to keep up; finer than the screen as soon as it rests, so that no edge is jagged. */
  draw() {
    this.frame ||= requestAnimationFrame(time => {
      this.frame = 0;
      this.#pace(time);
      this.#render(this.coarse);
      clearTimeout(this.resting);
      this.resting = setTimeout(() => this.#render(restFactor), restAfterMs);
    });
  }

  #pace(time) {
    const took = time - (this.before ?? 0);
    this.before = time;
    // After a rest the first frame says nothing.
    if (took > 150) return;
    this.late = took > lateMs ? (this.late ?? 0) + 1 : 0;
    if (this.late >= 3) { this.coarse = Math.max(coarsest, this.coarse * 0.8); this.late = 0; }
  }

  resize() {
    const { width, height } = this.canvas.parentElement.getBoundingClientRect();
    if (width < 1 || height < 1) return;
    this.size = { width, height };
    this.coarse = 1;
    this.#fit();
    this.draw();
  }

  /** Pixels of the picture for each of the page. */
  #sharpen(factor) {
    const { width, height } = this.size, most = Math.sqrt(mostPx / (width * height));
    const ratio = Math.min(most, Math.min(2, window.devicePixelRatio || 1) * factor);
    const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)];
    if (this.canvas.width !== w || this.canvas.height !== h) [this.canvas.width, this.canvas.height] = [w, h];
    this.renderer.setViewport(0, 0, w, h);
  }

  /** Radians for a pixel, so that the cloth in front stays under the finger. */
  get perPx() { return 2 * Math.tan(openRad / 2) * this.#away / (this.size?.height ?? 400) / this.reach; }

  turn(by, tilt) {
    this.angle += by;
    this.tilt = Math.max(lowest, Math.min(tallest, this.tilt + tilt));
  }

  zoom(times) { this.times = Math.max(1, Math.min(closest, this.times * times)); }

  /** Turns what lies at an angle from the middle of the front, to the right, towards her. */
  faceAngle(angle, aim = 0) {
    this.angle = -angle + (this.isTurned ? Math.PI : 0);
    this.aim = aim;
  }

  face(name) {
    const strip = this.map.strips[name.round];
    if (!strip) return;
    const [x, , z] = placeOf(strip, name.start + name.width / 2);
    if (isStraight(this.map)) this.faceAngle(0, x); else this.faceAngle(Math.atan2(x, z));
    this.draw();
  }

  /** Its outer or its inner side. A straight one is walked round; of one that closes the near half is left out. */
  show(isInside) {
    const straight = isStraight(this.map), was = this.isTurned;
    this.isTurned = isInside;
    if (isInside !== was) this.angle += Math.PI;
    const isNamed = straight || isInside !== this.map.outside, { cloth, band, sewnOn } = this.parts;
    for (const mesh of [cloth, band, sewnOn]) mesh.material.uniforms.isOpened.value = !straight && isInside ? 1 : 0;
    // A strip has one side with names; from the other it shows a little through the cloth that it is sewn on.
    const isThrough = !straight && !isNamed;
    sewnOn.material.side = isThrough ? three.DoubleSide : this.map.outside ? three.FrontSide : three.BackSide;
    sewnOn.material.uniforms.isNamed.value = isThrough ? 0 : 1;
    Object.assign(sewnOn.material, { polygonOffset: isThrough, polygonOffsetFactor: -4, polygonOffsetUnits: -400 });
    this.frameOf.visible = isNamed;
    this.isNamed = isNamed;
    this.draw();
  }

  get #away() { return Math.max(this.far - this.reach, 0.5) / this.times + 0.02; }

  /** How far off one stands to see it whole, and at what height one looks. */
  #fit() {
    const half = Math.tan(openRad / 2), wide = half * this.size.width / this.size.height, straight = isStraight(this.map);
    const top = this.map.body[0].across / mmPerUnit / (straight ? 2 : 1), points = [];
    for (let i = 0; i < 16; i++) {
      const [x, z] = [Math.sin(i * Math.PI / 8), Math.cos(i * Math.PI / 8)];
      points.push([x * this.reach, 0, straight ? 0 : z * this.reach], [x * top, this.tall, straight ? 0 : z * top]);
    }
    const seen = (far, middle) => points.map(([x, y, z]) => {
      const up = y - middle, [sin, cos] = [Math.sin(firstTilt), Math.cos(firstTilt)], deep = far - z * cos - up * sin;
      return [x / deep, (up * cos - z * sin) / deep, deep];
    });
    this.middle = this.tall / 2;
    for (this.far = this.reach + 0.5; this.far < 400; this.far *= 1.03) {
      const all = seen(this.far, this.middle), ys = all.map(p => p[1]);
      if (all.some(p => p[2] < 0.3 * this.far)) continue;
      this.middle = Math.max(0, Math.min(this.tall, this.middle + (Math.max(...ys) + Math.min(...ys)) / 2 * this.far));
      if (seen(this.far, this.middle).every(([x, y, deep]) => deep > 0.2 && Math.abs(x) < 0.92 * wide && Math.abs(y) < 0.9 * half)) break;
    }
  }

  #render(factor) {
    if (!this.size || this.isGone) return;
    if (factor) this.#sharpen(factor);
    const near = 1 - 1 / this.times ** 2, target = this.middle + near * (this.low - this.middle);
    const away = this.#away + this.reach, tilt = this.tilt;
    this.camera.aspect = this.size.width / this.size.height;
    const aim = near * (this.aim ?? 0) * Math.cos(this.angle);
    // From close by one looks at what is in front, and not at the middle.
    const before = near * this.reach * (isStraight(this.map) ? 0 : this.isTurned ? -1 : 1);
    const back = this.isTurned && !isStraight(this.map) ? near * 2 * this.reach : 0;
    this.camera.position.set(aim, target + away * Math.sin(tilt), away * Math.cos(tilt) - back);
    this.camera.lookAt(aim, target, before);
    this.camera.near = Math.max(0.02, this.#away * 0.2);
    this.camera.updateProjectionMatrix();
    this.parts.whole.rotation.y = this.angle;
    this.renderer.render(this.scene, this.camera);
    const box = this.canvas.parentElement;
    box.dataset.angle = this.angle.toFixed(3);
    box.dataset.times = this.times.toFixed(3);
    box.dataset.drawn = String(this.map.layout);
    this.drawn();
  }

  /** A soft shadow on the floor. */
  #shadow() {
    if (isStraight(this.map)) return;
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = 128;
    const g = canvas.getContext('2d'), fade = g.createRadialGradient(64, 64, 20, 64, 64, 64);
    fade.addColorStop(0, 'rgba(20,16,10,0.42)');
    fade.addColorStop(1, 'rgba(20,16,10,0)');
    g.fillStyle = fade;
    g.fillRect(0, 0, 128, 128);
    const wide = 2.5 * this.map.body.at(-1).across / mmPerUnit;
    const floor = new three.Mesh(new three.PlaneGeometry(wide, wide), new three.MeshBasicMaterial({ map: new three.CanvasTexture(canvas), transparent: true, depthWrite: false }));
    floor.rotation.x = -Math.PI / 2;
    floor.position.y = -0.3;
    this.scene.add(floor);
  }

  /** Where in the box the middle of a name is seen; null where it is turned away. */
  spot(name) {
    const strip = this.map.strips[name.round], at = name.start + name.width / 2;
    if (!strip || !this.size || !this.isNamed) return null;
    const [foot, over] = [0, 10].map(off => new three.Vector3(...placeOf(strip, at, 1, this.map.outside ? off : -off)).applyMatrix4(this.parts.whole.matrixWorld));
    const isTowards = over.sub(foot).dot(this.camera.position.clone().sub(foot)) > 0;
    const { x, y } = foot.project(this.camera);
    return isTowards && Math.abs(x) < 1 && Math.abs(y) < 1 ? { x: (x + 1) / 2 * this.size.width, y: (1 - y) / 2 * this.size.height } : null;
  }

  /** The strip under a place on the screen, where along it. */
  #hit(clientX, clientY) {
    const rect = this.canvas.getBoundingClientRect();
    const ray = new three.Raycaster();
    ray.setFromCamera(new three.Vector2((clientX - rect.left) / rect.width * 2 - 1, 1 - (clientY - rect.top) / rect.height * 2), this.camera);
    const hit = ray.intersectObjects([this.parts.cloth, this.parts.sewnOn], false)[0];
    return hit?.object === this.parts.sewnOn ? { mm: hit.uv1.x, round: Math.round(hit.uv1.y) } : null;
  }

  /** The name at a place: a strip seen from far off is thinner than a finger, so that it is looked for above and below as well. */
  at(clientX, clientY) {
    for (const off of [0, -5, 5, -10, 10, -16, 16]) {
      const hit = this.#hit(clientX, clientY + off);
      if (hit) return this.#nearest(hit);
    }
    return null;
  }

  inFront() {
    const rect = this.canvas.getBoundingClientRect();
    for (let y = 0.96; y > 0.04; y -= 0.01) {
      const hit = this.#hit(rect.left + rect.width / 2, rect.top + rect.height * y);
      if (hit) return this.#nearest(hit);
    }
    return null;
  }

  #nearest({ mm, round }) {
    let best = null, least = Infinity;
    for (const name of this.data.within(round, mm - 300, mm + 300)) {
      if (name.kind === 'motif') continue;
      const away = Math.max(name.start - mm, 0, mm - name.start - name.width);
      if (away < least) { least = away; best = name; }
    }
    return best;
  }

  /** A frame about a name that is pressed. */
  mark(name) {
    this.frameOf.geometry.dispose();
    this.frameOf.geometry = new three.BufferGeometry();
    const strip = name && this.map.strips[name.round];
    if (strip) {
      const from = name.start - 3, to = name.start + name.width + 3, steps = 24, at = [], faces = [];
      for (const part of [0.04, 0.96]) {
        for (let i = 0; i <= steps; i++) {
          const mm = from + (to - from) * i / steps, thick = 0.7 / Math.max(1, this.data.map.finished);
          for (const p of [part - thick, part + thick]) at.push(...placeOf(strip, mm, p, (this.map.outside ? 1 : -1) * 1.4 * liftMm));
          const k = at.length / 3 - 4;
          if (i > 0) faces.push(k, k + 2, k + 3, k, k + 3, k + 1);
        }
      }
      this.frameOf.geometry.setAttribute('position', new three.Float32BufferAttribute(at, 3));
      this.frameOf.geometry.setIndex(faces);
    }
    this.draw();
  }

  /** Larger than it is seen, on the page's own paper. */
  async picture() {
    const { width, height } = this.size, long = picturePx / Math.max(width, height);
    this.canvas.width = Math.round(width * long);
    this.canvas.height = Math.round(height * long);
    this.renderer.setViewport(0, 0, this.canvas.width, this.canvas.height);
    this.renderer.setClearColor(this.style.getPropertyValue('--strip-table').trim(), 1);
    this.#render();
    const made = new Promise(done => this.canvas.toBlob(done, 'image/png'));
    this.renderer.setClearColor(0, 0);
    this.#render(restFactor);
    return await made;
  }
}
