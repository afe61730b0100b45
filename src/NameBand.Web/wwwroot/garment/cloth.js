// The garment's cloth and strips as surfaces, lit softly from the upper left.

import * as three from '../three/three.module.min.js';
import { rowsOf } from './letters.js';

export const mmPerUnit = 100;
export const liftMm = 1.2; // a strip lies on its cloth

const vertex = `
attribute float hollow;
uniform vec3 lamp;
varying vec2 at;
varying vec2 light;
varying float near;
void main() {
  vec3 n = normalize(normalMatrix * normal);
  float d = dot(n, lamp), up = n.y * 0.5 + 0.5;
  at = uv;
  light = vec2(hollow * (0.46 + 0.2 * up + 0.55 * max(d, 0.0)), (1.5 - 0.7 * hollow) * (0.34 + 0.14 * (1.0 - up) + 0.34 * max(-d, 0.0)));
  near = (modelMatrix * vec4(position, 1.0)).z;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;

const fragment = `
uniform vec3 colour;
uniform sampler2D names;
uniform float isNamed;
uniform float sheen;
uniform float isOpened;
varying vec2 at;
varying vec2 light;
varying float near;
void main() {
  if (isOpened > 0.5 && near > 0.0) discard;
  float lit = gl_FrontFacing ? light.x : light.y;
  vec3 base = isNamed > 0.5 ? texture2D(names, at).rgb : colour;
  gl_FragColor = vec4(base * lit + sheen * pow(max(lit - 0.55, 0.0), 2.0), 1.0);
}`;

// Colours as the page has them are mixed as they are.
three.ColorManagement.enabled = false;
export const plainColour = css => new three.Color(css);

function material(colour, names = null) {
  return new three.ShaderMaterial({
    vertexShader: vertex, fragmentShader: fragment, side: three.DoubleSide,
    uniforms: {
      colour: { value: plainColour(colour) }, names: { value: names }, isNamed: { value: names ? 1 : 0 }, sheen: { value: names ? 0 : 0.5 }, isOpened: { value: 0 },
      lamp: { value: new three.Vector3(-0.42, 0.48, 0.77).normalize() },
    },
  });
}

const point = (line, i) => [line.points[2 * i], line.points[2 * i + 1], line.height];
const between = (a, b, t) => a.map((v, i) => v + t * (b[i] - v));
const stand = ([x, y, z]) => [x / mmPerUnit, z / mmPerUnit, -y / mmPerUnit];

function normalOf(along, down) {
  const [ax, ay, az] = along, [bx, by, bz] = down;
  const n = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx], long = Math.hypot(...n) || 1;
  return n.map(v => v / long);
}

/** How deep in a fold a point lies: 1 on a crest, less in a hollow. */
function hollowAt(line, i, isStraight) {
  if (line.depth < 0.5) return 1;
  const [x, y] = point(line, i), out = isStraight ? -y : Math.hypot(x, y) - line.across;
  return 0.8 + 0.2 * Math.max(-1, Math.min(1, out / line.depth));
}

function surface(positions, normals, hollows, uvs, faces, places) {
  const geometry = new three.BufferGeometry();
  geometry.setAttribute('position', new three.Float32BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new three.Float32BufferAttribute(normals, 3));
  geometry.setAttribute('hollow', new three.Float32BufferAttribute(hollows, 1));
  geometry.setAttribute('uv', new three.Float32BufferAttribute(uvs, 2));
  if (places) geometry.setAttribute('uv1', new three.Float32BufferAttribute(places, 2));
  geometry.setIndex(faces);
  return geometry;
}

export const isStraight = map => map.kind === 'banner' || map.kind === 'curtain';

/** The cloth between its lines. */
function body(map) {
  const lines = map.body, points = lines[0].points.length / 2, straight = isStraight(map), closes = map.kind === 'skirt';
  const positions = [], normals = [], hollows = [], uvs = [], faces = [];
  lines.forEach((line, l) => {
    for (let i = 0; i < points; i++) {
      const before = i > 0 ? i - 1 : closes ? points - 2 : 0, after = i < points - 1 ? i + 1 : closes ? 1 : i;
      const along = stand(point(line, after)).map((v, k) => v - stand(point(line, before))[k]);
      const above = stand(point(lines[Math.max(0, l - 1)], i)), below = stand(point(lines[Math.min(lines.length - 1, l + 1)], i));
      positions.push(...stand(point(line, i)));
      normals.push(...normalOf(along, above.map((v, k) => v - below[k])));
      hollows.push(hollowAt(line, i, straight));
      uvs.push(i / points, l / lines.length);
      if (l > 0 && i > 0) {
        const at = l * points + i, over = at - points;
        faces.push(over - 1, at - 1, at, over - 1, at, over);
      }
    }
  });
  return surface(positions, normals, hollows, uvs, faces);
}

/** Parts of a line's way between its points, by how much of the cloth has gone by. */
function placeAt(along, mm) {
  let low = 0, high = along.length - 1;
  while (high - low > 1) { const middle = (low + high) >> 1; if (along[middle] <= mm) low = middle; else high = middle; }
  return low + Math.max(0, Math.min(1, (mm - along[low]) / Math.max(1e-9, along[low + 1] - along[low])));
}

/** Where on its line a place of a strip lies, in points of the line. */
export function onLine(strip, mm) {
  const whole = strip.along.at(-1), at = strip.begins + (strip.forward ? 1 : -1) * mm / strip.length * whole;
  return placeAt(strip.along, at < -1e-6 || at > whole + 1e-6 ? at - whole * Math.floor(at / whole) : Math.max(0, Math.min(whole, at)));
}

const across = (line, place) => { const i = Math.min(Math.floor(place), line.points.length / 2 - 2); return between(point(line, i), point(line, i + 1), place - i); };

/** A place of a strip in the garment's own space: along it, from its lower edge (0) to its upper (1), and so far off the cloth. */
export function placeOf(strip, mm, part = 0.5, offMm = 0) {
  const place = onLine(strip, mm), i = Math.min(Math.floor(place), strip.along.length - 2);
  const [a, b] = [stand(point(strip.lower, i)), stand(point(strip.lower, i + 1))], low = stand(across(strip.lower, place)), high = stand(across(strip.upper, place));
  const n = normalOf(b.map((v, c) => v - a[c]), high.map((v, c) => v - low[c]));
  return between(low, high, part).map((v, c) => v + n[c] * offMm / mmPerUnit);
}

/** Where, along a strip from one of its places to another, its line has points; both ends with them. */
function stops(strip, from, to) {
  const whole = strip.along.at(-1), all = [from, to];
  for (const along of strip.along) {
    const way = (strip.forward ? along - strip.begins : strip.begins - along) / whole;
    const mm = (way - Math.floor(way)) * strip.length;
    if (mm > from + 0.05 && mm < to - 0.05) all.push(mm);
  }
  return all.sort((a, b) => a - b);
}

/** All strips, each stretch with its row of the picture. */
function strips(map, stripMap) {
  const { rows, scale, tall, width, height } = rowsOf(stripMap);
  const positions = [], normals = [], hollows = [], uvs = [], faces = [], places = [];
  const straight = isStraight(map), lift = (map.outside ? 1 : -1) * liftMm / mmPerUnit;
  for (const row of rows) {
    const strip = map.strips[row.round], all = stops(strip, row.from, row.to), pad = (tall - stripMap.finished * scale) / 2;
    all.forEach((mm, k) => {
      // A hair's breadth inside, so that the seam of a line that closes is not leapt over.
      const inside = Math.min(row.to - 1e-4, Math.max(row.from + 1e-4, mm));
      const place = onLine(strip, inside), i = Math.min(Math.floor(place), strip.along.length - 2);
      const low = stand(across(strip.lower, place)), high = stand(across(strip.upper, place));
      const near = Math.max(0, i - 1), far = Math.min(strip.along.length - 1, i + 2);
      const along = stand(point(strip.lower, far)).map((v, c) => v - stand(point(strip.lower, near))[c]);
      const n = normalOf(along, high.map((v, c) => v - low[c])), deep = hollowAt(strip.lower, Math.round(place), straight);
      const u = (inside - row.from) * scale / width;
      const [top, foot] = [row.top + pad, row.top + tall - pad].map(y => 1 - y / height);
      // Names that stand for the wearer have their tops towards the hem.
      for (const [p, v] of [[low, map.upright ? foot : top], [high, map.upright ? top : foot]]) {
        positions.push(...p.map((q, c) => q + n[c] * lift));
        normals.push(...n);
        hollows.push(deep);
        uvs.push(u, v);
        places.push(mm, row.round);
      }
      if (k > 0) {
        const at = positions.length / 3 - 4;
        if (strip.forward) faces.push(at, at + 2, at + 3, at, at + 3, at + 1); else faces.push(at, at + 3, at + 2, at, at + 1, at + 3);
      }
    });
  }
  return surface(positions, normals, hollows, uvs, faces, places);
}

/** What it hangs by: a waistband, a collar, or a pole. */
function holder(map, colour) {
  const top = map.body[0], y = top.height / mmPerUnit, radius = top.across / mmPerUnit;
  if (isStraight(map)) {
    const pole = new three.Mesh(new three.CylinderGeometry(0.13, 0.13, radius * 1.08, 20), material('#8a6a3f'));
    pole.rotation.z = Math.PI / 2;
    pole.position.y = y + 0.05;
    pole.geometry.setAttribute('hollow', new three.Float32BufferAttribute(new Array(pole.geometry.attributes.position.count).fill(1), 1));
    return pole;
  }
  const points = map.body[0].points.length / 2, positions = [], normals = [], hollows = [], uvs = [], faces = [];
  for (let i = 0; i < points; i++) {
    const [x, , z] = stand(point(top, i)), long = Math.hypot(x, z) || 1, n = [x / long, 0.05, z / long];
    const r = radius + 0.3 * top.depth / mmPerUnit; // a band holds its gathers and has none
    for (const [high, out] of [[-0.04, 1.015], [0.3, 1.0]]) {
      positions.push(n[0] * r * out, y + high, n[2] * r * out);
      normals.push(...n);
      hollows.push(1);
      uvs.push(0, 0);
    }
    if (i > 0) { const at = 2 * i - 2; faces.push(at, at + 2, at + 3, at, at + 3, at + 1); }
  }
  return new three.Mesh(surface(positions, normals, hollows, uvs, faces), material(colour));
}

/** The garment as one thing that turns. */
export function garmentOf(map, stripMap, canvas, colours) {
  const names = new three.CanvasTexture(canvas);
  names.colorSpace = three.NoColorSpace;
  names.anisotropy = 4;
  const whole = new three.Group();
  const cloth = new three.Mesh(body(map), material(colours.garment));
  const sewnOn = new three.Mesh(strips(map, stripMap), material(colours.cotton, names));
  const band = holder(map, colours.garment);
  whole.add(cloth, sewnOn, band);
  return { whole, cloth, sewnOn, band, names };
}

/** Lets go of all that the graphics card holds of it. */
export function forget({ whole, names }) {
  names.dispose();
  whole.traverse(o => { o.geometry?.dispose(); o.material?.dispose(); });
}
