// The table with everything on it but the names: tape measure, cloth, hoopings, places kept clear, joins and marks.

import { tapePx } from './camera.js';
import { lettering } from './colours.js';

export function table(g, camera, c) {
  g.fillStyle = c.table;
  g.fillRect(0, 0, camera.width, camera.height);
  const shade = g.createLinearGradient(0, tapePx, 0, tapePx + 14);
  shade.addColorStop(0, c.shade);
  shade.addColorStop(1, 'transparent');
  g.fillStyle = shade;
  g.fillRect(0, tapePx, camera.width, 14);
}

export function tape(g, camera, c, inches) {
  g.fillStyle = c.tape;
  g.fillRect(0, 0, camera.width, tapePx);
  g.fillStyle = c.weld;
  g.fillRect(0, tapePx - 1, camera.width, 1);
  const unit = inches ? 25.4 : 10;
  const fine = inches ? [16, 8, 4, 2, 1] : [10, 5, 1];
  const px = unit * camera.scale;
  const each = fine.find(n => px / n >= 4) ?? 0;
  const step = each > 0 ? 1 / each : [1, 2, 5, 10, 20, 50, 100, 200, 500].find(n => n * px >= 7) ?? 1000;
  const number = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find(n => n * px >= 38) ?? 2000;
  const from = Math.max(0, Math.floor(camera.left / unit / step) * step);
  const to = Math.min(camera.longest, camera.right) / unit;
  g.fillStyle = c.onTape;
  g.font = `12px ${lettering}`;
  g.textAlign = 'left';
  g.textBaseline = 'alphabetic';
  for (let i = 0; from + i * step <= to + 1e-9; i++) {
    const at = from + i * step;
    const whole = Math.abs(at - Math.round(at)) < 1e-6;
    const half = Math.abs(2 * at - Math.round(2 * at)) < 1e-6;
    const isNumber = whole && Math.round(at) % number === 0;
    const tall = isNumber ? 20 : whole ? 14 : half ? 10 : 6;
    const x = Math.round(camera.x(at * unit));
    g.fillRect(x, 0, 1, tall);
    if (isNumber) g.fillText(String(Math.round(at)), x + 4, tapePx - 10);
  }
  g.font = `11px ${lettering}`;
  g.textAlign = 'right';
  g.fillStyle = c.tape;
  g.fillRect(camera.width - 46, 20, 46, 19);
  g.fillStyle = c.onTape;
  g.fillText(inches ? 'inches' : 'cm', camera.width - 6, tapePx - 8);
}

export function cloth(g, camera, map, lane, round, c) {
  const y = camera.centre(lane), a = camera.across;
  const left = Math.max(-2, camera.x(0)), right = Math.min(camera.width + 2, camera.x(map.rounds[round].length));
  const half = map.cut / 2 * a, finished = map.finished / 2 * a;
  g.fillStyle = c.shade;
  g.fillRect(left + 2, y - half + 3, right - left, 2 * half);
  g.fillStyle = c.turnIn;
  g.fillRect(left, y - half, right - left, 2 * half);
  g.fillStyle = c.cotton;
  g.fillRect(left, y - finished, right - left, 2 * finished);
  if (camera.scale >= 14) weave(g, camera, y, finished, left, right, c);
  g.strokeStyle = c.weld;
  g.lineWidth = 1;
  if (a * map.cut > 40) {
    g.setLineDash([5, 4]);
    for (const side of [-1, 1]) line(g, left, y + side * finished, right, y + side * finished);
    g.setLineDash([]);
  }
}

// Plain weave of some twenty threads a centimetre, seen only close by.
function weave(g, camera, y, half, left, right, c) {
  g.strokeStyle = c.hair;
  g.lineWidth = 1;
  const step = 0.5 * camera.scale;
  const first = Math.ceil(camera.mm(left) / 0.5) * 0.5;
  g.beginPath();
  for (let x = camera.x(first); x < right; x += step) { g.moveTo(Math.round(x) + 0.5, y - half); g.lineTo(Math.round(x) + 0.5, y + half); }
  for (let at = Math.max(-half, -y); at < Math.min(half, camera.height - y); at += step) { g.moveTo(left, y + at); g.lineTo(right, y + at); }
  g.stroke();
}

export function clearPlaces(g, camera, map, lane, round, c) {
  const y = camera.centre(lane), half = map.finished / 2 * camera.across;
  const clear = map.rounds[round].clear;
  for (let i = 0; i < clear.length; i += 2) {
    const left = camera.x(clear[i]), right = camera.x(clear[i + 1]);
    if (right < 0 || left > camera.width) continue;
    g.save();
    g.beginPath();
    g.rect(left, y - half, right - left, 2 * half);
    g.clip();
    g.strokeStyle = c.madder;
    g.lineWidth = 1.5;
    for (let x = left - 2 * half; x < right; x += 9) line(g, x, y + half, x + 2 * half, y - half);
    g.restore();
    if (right - left > 70) label(g, 'keep clear', (Math.max(0, left) + Math.min(camera.width, right)) / 2, y + 4, c.madder, c.cotton);
  }
}

export function joins(g, camera, map, lane, round, c) {
  const y = camera.centre(lane), half = map.cut / 2 * camera.across;
  for (const at of map.rounds[round].joins) {
    const x = Math.round(camera.x(at)) + 0.5;
    if (x < -40 || x > camera.width + 40) continue;
    g.strokeStyle = c.weld;
    g.lineWidth = 2;
    g.setLineDash([2, 3]);
    line(g, x, y - half - 4, x, y + half + 4);
    g.setLineDash([]);
    if (camera.scale > 0.6) label(g, 'join', x, y - half + 10, c.ink, c.turnIn);
  }
}

/** Brackets under the strip: number and minutes of each hooping, or that they are being counted. */
export function hoopings(g, camera, map, byRound, lane, round, minutes, c) {
  const y = camera.centre(lane) + map.cut / 2 * camera.across + 8;
  g.lineWidth = 1.5;
  g.font = `13px ${lettering}`;
  g.textAlign = 'center';
  g.textBaseline = 'alphabetic';
  for (const { hooping, segment } of byRound[round]) {
    const left = camera.x(segment[1]), right = camera.x(segment[1] + segment[2]);
    if (right < 0 || left > camera.width) continue;
    g.strokeStyle = c.onTable;
    g.fillStyle = c.onTable;
    g.beginPath();
    g.moveTo(Math.round(left) + 0.5, y - 6);
    g.lineTo(Math.round(left) + 0.5, y + 2.5);
    g.lineTo(Math.round(right) - 0.5, y + 2.5);
    g.lineTo(Math.round(right) - 0.5, y - 6);
    g.stroke();
    const wide = right - left;
    const said = hooping.sewn ? '✓ sewn' : minutes ? `${Math.max(1, Math.round(minutes[hooping.number] ?? 0))} min` : map.hasPaths ? 'counting' : '';
    const text = wide > 150 ? `hooping ${hooping.number}${said && ' · '}${said}` : wide > 84 ? `${hooping.number}${said && ' · '}${said}` : wide > 20 ? String(hooping.number) : '';
    const middle = Math.min(Math.max((left + right) / 2, Math.min(80, right - 60)), Math.max(camera.width - 80, left + 60));
    if (text) g.fillText(text, wide > camera.width ? middle : (left + right) / 2, y + 19);
    if (camera.scale >= 1.5) marks(g, camera, map, lane, segment, c);
  }
}

function marks(g, camera, map, lane, segment, c) {
  const y = camera.centre(lane) - map.markY * camera.across;
  const arm = Math.max(4, 3 * camera.scale);
  g.strokeStyle = c.madder;
  g.lineWidth = 1.5;
  for (const at of [segment[3], segment[4]]) {
    const x = camera.x(segment[1] + at);
    line(g, x - arm, y, x + arm, y);
    line(g, x, y - arm, x, y + arm);
  }
}

/** Squares by the number of holes: larger and darker where there are more, so that colour is not the only sign. */
export function load(g, cells, bears, c) {
  for (let i = 0; i < cells.length; i += 3) {
    const part = cells[i + 2] / (3 * bears);
    const size = 0.5 * Math.min(1, 0.25 + 0.75 * part);
    g.fillStyle = part > 1 ? c.madder : part > 0.6 ? c.weld : c.quiet;
    g.fillRect(cells[i] - size / 2, cells[i + 1] - size / 2, size, size);
  }
}

export function around(g, camera, map, lane, name, c, isPressed) {
  const y = camera.centre(lane), half = map.finished / 2 * camera.across;
  g.strokeStyle = isPressed ? c.madder : c.seen;
  g.lineWidth = isPressed ? 2.5 : 2;
  g.setLineDash(isPressed ? [7, 4] : []);
  g.strokeRect(camera.x(name.start) - 5, y - half + 2, name.width * camera.scale + 10, 2 * half - 4);
  g.setLineDash([]);
}

export function label(g, text, x, y, colour, behind) {
  g.font = `12px ${lettering}`;
  g.textAlign = 'center';
  const wide = g.measureText(text).width + 8;
  g.fillStyle = behind;
  g.fillRect(x - wide / 2, y - 12, wide, 16);
  g.fillStyle = colour;
  g.fillText(text, x, y);
}

function line(g, x0, y0, x1, y1) {
  g.beginPath();
  g.moveTo(x0, y0);
  g.lineTo(x1, y1);
  g.stroke();
}
