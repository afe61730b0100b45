// The table with everything on it but the names: tape measure, cloth, hoopings, places kept clear, joins and marks.

import { t } from '../said.js';
import { tapePx } from './camera.js';
import { inThread, lettering } from './colours.js';

export function table(g, camera, c) {
  g.fillStyle = c.table;
  g.fillRect(0, 0, camera.width, camera.height);
  const shade = g.createLinearGradient(0, tapePx, 0, tapePx + 14);
  shade.addColorStop(0, c.shade);
  shade.addColorStop(1, 'transparent');
  g.fillStyle = shade;
  g.fillRect(0, tapePx, camera.width, 14);
}

/** The tape of a round: each piece of its cloth counts its own centimetres, from its cut left end. */
export function tape(g, camera, map, round, c, inches) {
  g.fillStyle = c.tape;
  g.fillRect(0, 0, camera.width, tapePx);
  g.fillStyle = c.weld;
  g.fillRect(0, tapePx - 1, camera.width, 1);
  const unit = inches ? 25.4 : 10;
  const fine = inches ? [16, 8, 4, 2, 1] : [10, 5, 1];
  const { rulers, length } = map.rounds[round], part = 1 - map.shortening;
  const px = unit * part * camera.scale;
  const each = fine.find(n => px / n >= 4) ?? 0;
  const step = each > 0 ? 1 / each : [1, 2, 5, 10, 20, 50, 100, 200, 500].find(n => n * px >= 7) ?? 1000;
  const number = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find(n => n * px >= 38) ?? 2000;
  g.fillStyle = c.onTape;
  g.font = `12px ${lettering}`;
  g.textAlign = 'left';
  g.textBaseline = 'alphabetic';
  rulers.forEach((ruler, i) => {
    const start = i === 0 ? Math.min(0, ruler.start) : ruler.start, end = rulers[i + 1]?.start ?? Math.max(length, camera.longest);
    const read = mm => (ruler.onCloth + (mm - ruler.start) / part) / unit, along = at => ruler.start + (at * unit - ruler.onCloth) * part;
    const from = Math.ceil(read(Math.max(start, camera.left)) / step - 1e-9) * step, to = read(Math.min(end, camera.right));
    for (let k = 0; from + k * step <= to + 1e-9; k++) mark(from + k * step, along(from + k * step));
    if (i > 0) g.fillRect(Math.round(camera.onTape(ruler.start)), 0, 2, tapePx);
  });
  function mark(at, mm) {
    const whole = Math.abs(at - Math.round(at)) < 1e-6;
    const half = Math.abs(2 * at - Math.round(2 * at)) < 1e-6;
    const isNumber = whole && Math.round(at) % number === 0;
    const tall = isNumber ? 20 : whole ? 14 : half ? 10 : 6;
    const x = Math.round(camera.onTape(mm));
    g.fillRect(x, 0, 1, tall);
    // The last number makes room for the unit at the end of the tape.
    if (isNumber && x < camera.width - 66) g.fillText(String(Math.round(at)), x + 4, tapePx - 10);
  }
  g.font = `11px ${lettering}`;
  g.textAlign = 'right';
  g.fillStyle = c.tape;
  g.fillRect(camera.width - 46, 20, 46, 19);
  g.fillStyle = c.onTape;
  g.fillText(inches ? t('inches') : t('cm'), camera.width - 6, tapePx - 8);
  if (map.rounds.length > 1) lane(g, camera, map.rounds[round].number, c);
}

/** Which round's cloth the tape measures, where there are several. */
function lane(g, camera, number, c) {
  const text = `round ${number}`;
  const wide = g.measureText(text).width + 8;
  g.fillStyle = c.tape;
  g.fillRect(camera.width - wide - 2, 2, wide + 2, 16);
  g.fillStyle = c.onTape;
  g.fillText(text, camera.width - 6, 14);
}

export function cloth(g, camera, map, lane, round, c) {
  const left = Math.max(camera.mm(-2 - camera.sagPx), 0), right = Math.min(camera.mm(camera.width + 2 + camera.sagPx), map.rounds[round].length);
  const half = map.cut / 2, finished = map.finished / 2;
  g.fillStyle = c.shade;
  g.translate(2, 3);
  band(g, camera, lane, left, right, -half, half);
  g.fill();
  g.translate(-2, -3);
  g.fillStyle = c.turnIn;
  band(g, camera, lane, left, right, -half, half);
  g.fill();
  g.fillStyle = c.cotton;
  band(g, camera, lane, left, right, -finished, finished);
  g.fill();
  if (camera.scale >= 14) weave(g, camera, lane, left, right, finished, c);
  if (camera.across * map.cut > 40) {
    g.strokeStyle = c.weld;
    g.lineWidth = 1;
    g.setLineDash([5, 4]);
    for (const side of [-1, 1]) {
      g.beginPath();
      along(g, camera, lane, left, right, side * finished);
      g.stroke();
    }
    g.setLineDash([]);
  }
}

/** A line along a strip, from one place to the other; it goes on with the path that was begun. */
function along(g, camera, lane, from, to, above, goOn = false) {
  const steps = camera.arc(lane) ? Math.max(2, Math.ceil(Math.abs(to - from) * camera.scale / 24)) : 1;
  for (let i = 0; i <= steps; i++) {
    const [x, y] = camera.at(lane, from + (to - from) * i / steps, above);
    if (i === 0 && !goOn) g.moveTo(x, y); else g.lineTo(x, y);
  }
}

/** The outline of a piece of strip as a new path. */
function band(g, camera, lane, from, to, low, high) {
  g.beginPath();
  bandInto(g, camera, lane, from, to, low, high);
}

function bandInto(g, camera, lane, from, to, low, high) {
  along(g, camera, lane, from, to, high);
  along(g, camera, lane, to, from, low, true);
  g.closePath();
}

// Plain weave of some twenty threads a centimetre, seen only close by; a curved strip is cut across it.
function weave(g, camera, lane, left, right, half, c) {
  g.save();
  band(g, camera, lane, left, right, -half, half);
  g.clip();
  g.strokeStyle = c.hair;
  g.lineWidth = 1;
  const step = 0.5 * camera.scale;
  g.beginPath();
  for (let x = camera.x(Math.ceil(left / 0.5) * 0.5); x < camera.width; x += step) { g.moveTo(Math.round(x) + 0.5, tapePx); g.lineTo(Math.round(x) + 0.5, camera.height); }
  for (let y = camera.centre(lane) % step; y < camera.height; y += step) { g.moveTo(0, y); g.lineTo(camera.width, y); }
  g.stroke();
  g.restore();
}

export function clearPlaces(g, camera, map, lane, round, c) {
  const half = map.finished / 2, across = camera.across * map.finished;
  const clear = map.rounds[round].clear;
  for (let i = 0; i < clear.length; i += 2) {
    const [left] = camera.at(lane, clear[i]), [right] = camera.at(lane, clear[i + 1]);
    if (right < 0 || left > camera.width) continue;
    g.save();
    band(g, camera, lane, clear[i], clear[i + 1], -half, half);
    g.clip();
    g.strokeStyle = c.madder;
    g.lineWidth = 1.5;
    const top = camera.centre(lane) - across / 2 - camera.sagPx, tall = across + 2 * camera.sagPx;
    for (let x = left - tall; x < right + across; x += 9) line(g, x, top + tall, x + tall, top);
    g.restore();
    if (right - left > 70) {
      const [x, y] = camera.at(lane, (Math.max(clear[i], camera.left) + Math.min(clear[i + 1], camera.right)) / 2);
      label(g, t('keep clear'), x, y + 4, c.madder, c.cotton);
    }
  }
}

export function joins(g, camera, map, lane, round, c) {
  const half = map.cut / 2 + 4 / camera.across;
  for (const at of map.rounds[round].joins) {
    const [x0, y0] = camera.at(lane, at, half), [x1, y1] = camera.at(lane, at, -half);
    if (x0 < -40 || x0 > camera.width + 40) continue;
    g.strokeStyle = c.weld;
    g.lineWidth = 2;
    g.setLineDash([2, 3]);
    line(g, x0, y0, x1, y1);
    g.setLineDash([]);
    if (camera.scale > 0.6) label(g, t('join'), x0, y0 + 14, c.ink, c.turnIn);
  }
}

/** The number of each name in the order of sewing, on the cloth that is turned in above it, where that is wide enough. */
export function numbers(g, camera, map, seen, c) {
  const room = (map.cut - map.finished) / 2;
  if (camera.scale < 1 || room * camera.scale < 15) return;
  g.font = `12px ${lettering}`;
  g.textAlign = 'left';
  g.textBaseline = 'alphabetic';
  g.fillStyle = c.ink;
  for (const { name, lane } of seen) {
    if (name.kind !== 'name') continue;
    const [x, y, angle] = camera.at(lane, name.start, map.finished / 2);
    g.save();
    g.translate(x, y);
    g.rotate(angle);
    g.fillText(String(name.order), 0, -4);
    g.restore();
  }
}

/** Names seen from too far off for letters: bars, and one bar where they lie closer than the screen can show. */
export function bars(g, camera, map, seen, c) {
  const threads = [...new Set(seen.map(s => s.name.thread))];
  for (const [isGone, thread] of [...threads.map(t => [false, t]), [true, 0]]) {
    let run = null;
    const end = () => { if (run) bandInto(g, camera, run.lane, run.from, run.to, run.low, run.high); };
    g.fillStyle = isGone ? c.quiet : inThread(c, thread).thread;
    g.beginPath();
    for (const { name, lane } of seen) {
      if (name.gone !== isGone || (!isGone && name.thread !== thread)) continue;
      const to = name.start + Math.max(name.width, 1.5 / camera.scale);
      if (run && run.lane === lane && run.low === name.base && name.start <= run.to) {
        run.to = Math.max(run.to, to);
      } else {
        end();
        run = { lane, from: name.start, to, low: name.base, high: name.base + Math.max(5 / camera.across, map.height) };
      }
    }
    end();
    g.fill();
  }
}

/** Brackets under the strip: number and minutes of each hooping, or that they are being counted. */
export function hoopings(g, camera, map, byRound, lane, round, minutes, c) {
  const beyond = camera.sagPx / camera.scale;
  const inSight = byRound[round].filter(({ segment }) => segment[1] + segment[2] >= camera.left - beyond && segment[1] <= camera.right + beyond);
  const edge = -map.cut / 2, below = 8 / camera.across;
  g.lineWidth = 1.5;
  g.strokeStyle = c.onTable;
  brackets(g, camera, lane, inSight, edge - below / 4, edge - below * 1.3);
  g.fillStyle = c.onTable;
  g.font = `13px ${lettering}`;
  g.textAlign = 'center';
  g.textBaseline = 'alphabetic';
  const sewnIn = number => map.hooped ? t('hooping {0}', number) : t('run {0}', number);
  for (const { hooping, segment } of inSight) {
    const from = segment[1], to = segment[1] + segment[2];
    const wide = camera.at(lane, to, edge)[0] - camera.at(lane, from, edge)[0];
    if (wide <= 20) continue;
    const said = hooping.sewn ? t('✓ sewn') : !minutes ? t('counting') : minutes[hooping.number] > 0 ? t('{0} min', Math.max(1, Math.round(minutes[hooping.number]))) : '';
    const text = wide > 150 ? `${sewnIn(hooping.number)}${said && ' · '}${said}` : wide > 84 ? `${hooping.number}${said && ' · '}${said}` : String(hooping.number);
    // Where both its ends are out of sight, its words stay in sight.
    const middle = Math.min(to, Math.max(from, (Math.max(from, camera.left) + Math.min(to, camera.right)) / 2));
    const room = Math.min(wide / 2, 70) / camera.scale;
    const [x, y, angle] = camera.at(lane, wide > camera.width / 2 ? Math.min(to - room, Math.max(from + room, middle)) : (from + to) / 2, edge - below * 1.3);
    g.save();
    g.translate(x, y);
    g.rotate(angle);
    g.fillText(text, 0, 17);
    g.restore();
    if (camera.scale >= 1.5 && map.hooped) marks(g, camera, map, lane, segment, c);
  }
}

/** Narrow ones side by side are one line: their ends would only run together. */
function brackets(g, camera, lane, hoopings, high, low) {
  let line = null;
  const end = () => { if (line) along(g, camera, lane, line.from, line.to, low); line = null; };
  g.beginPath();
  for (const { segment } of hoopings) {
    const from = segment[1], to = from + segment[2];
    if (segment[2] * camera.scale < 4) {
      if (line && (from - line.to) * camera.scale < 1) line.to = to; else { end(); line = { from, to }; }
      continue;
    }
    end();
    g.moveTo(...camera.at(lane, from, high).slice(0, 2));
    along(g, camera, lane, from, to, low, true);
    g.lineTo(...camera.at(lane, to, high).slice(0, 2));
  }
  end();
  g.stroke();
}

function marks(g, camera, map, lane, segment, c) {
  const arm = Math.max(4, 3 * camera.scale);
  g.strokeStyle = c.madder;
  g.lineWidth = 1.5;
  for (const mark of [segment[3], segment[4]]) {
    const [x, y, angle] = camera.at(lane, segment[1] + mark, map.markY);
    g.save();
    g.translate(x, y);
    g.rotate(angle);
    line(g, -arm, 0, arm, 0);
    line(g, 0, -arm, 0, arm);
    g.restore();
  }
}

/** Squares by how near the load comes to what the cloth bears: larger and darker where it is more, so that colour is not the only sign. */
export function load(g, { cell, near, cells }, c) {
  for (let i = 0; i < cells.length; i += 3) {
    const part = cells[i + 2];
    if (part <= 0) continue;
    const size = cell * Math.min(1, 0.3 + 0.6 * part);
    g.fillStyle = part > 1 ? c.madder : part > near ? c.weld : c.quiet;
    g.fillRect(cells[i] - size / 2, cells[i + 1] - size / 2, size, size);
  }
}

export function around(g, camera, map, lane, name, c, isPressed) {
  const half = map.finished / 2 - 2 / camera.across, beside = 5 / camera.scale;
  g.strokeStyle = isPressed ? c.madder : c.seen;
  g.lineWidth = isPressed ? 2.5 : 2;
  g.setLineDash(isPressed ? [7, 4] : []);
  band(g, camera, lane, name.start - beside, name.start + name.width + beside, -half, half);
  g.stroke();
  g.setLineDash([]);
}

/** Where a name that is carried would go. */
export function gapMark(g, camera, map, lane, at, c) {
  const half = map.finished / 2, thick = 2 / camera.scale;
  g.fillStyle = c.madder;
  band(g, camera, lane, at - thick, at + thick, -half, half);
  g.fill();
}

function label(g, text, x, y, colour, behind) {
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
