// Keys, wheel, mouse and fingers on the table.

import { Camera } from './camera.js';

/** @param drop told where the pressed name was let go, after it was carried there */
export function hands(box, view, press, drop) {
  const pointers = new Map();
  let last = null, moved = 0, held = null;

  const at = e => { const r = box.getBoundingClientRect(); return [e.clientX - r.left, e.clientY - r.top]; };
  const stop = () => { view.way = null; };

  box.addEventListener('wheel', e => {
    if (!view.data.map) return;
    const sideways = Math.abs(e.deltaX) > Math.abs(e.deltaY) || e.shiftKey;
    // A plain wheel scrolls the page, as everywhere, until the table was taken hold of.
    if (!sideways && !e.ctrlKey && document.activeElement !== box) return;
    e.preventDefault();
    stop();
    view.isMoved = true;
    const unit = e.deltaMode === 1 ? 16 : e.deltaMode === 2 ? 400 : 1;
    if (sideways) {
      view.camera.left += (e.deltaX || e.deltaY) * unit / view.camera.scale;
      view.camera.clamp();
    } else {
      view.camera.zoom(Math.exp(-e.deltaY * unit * (e.ctrlKey ? 0.01 : 0.002)), ...at(e));
    }
    view.changed();
  }, { passive: false });

  box.addEventListener('pointerdown', e => {
    if (e.button !== 0) return;
    stop();
    box.setPointerCapture(e.pointerId);
    pointers.set(e.pointerId, at(e));
    last = null;
    if (pointers.size === 1) moved = 0;
    held = pointers.size === 1 ? carriable(...at(e)) : null;
    if (!held) view.carry(null);
  });

  // A name is carried once it has been pressed: else whoever moves along the strip would carry names away.
  const carriable = (x, y) => { const name = view.at(x, y); return name && view.isPressed(name) && view.canMove(name) ? name : null; };
  // A finger on the pressed name carries it, and does not scroll the page.
  box.addEventListener('touchstart', e => {
    const touch = e.touches[0], r = box.getBoundingClientRect();
    if (e.touches.length === 1 && view.data.map && carriable(touch.clientX - r.left, touch.clientY - r.top)) e.preventDefault();
  }, { passive: false });

  box.addEventListener('pointermove', e => {
    if (!view.data.map) return;
    const here = at(e);
    if (!pointers.has(e.pointerId)) {
      const name = view.at(...here);
      if (name !== view.pointed) { view.pointed = name; view.changed(); }
      box.style.cursor = name ? (view.isPressed(name) && view.canMove(name) ? 'move' : 'pointer') : 'grab';
      return;
    }
    if (held && pointers.size === 1) {
      const from = pointers.get(e.pointerId);
      moved = Math.max(moved, Math.abs(here[0] - from[0]) + Math.abs(here[1] - from[1]));
      if (moved >= 6) view.carry(held, ...here);
      return;
    }
    pointers.set(e.pointerId, here);
    const all = [...pointers.values()];
    const middle = [all.reduce((s, p) => s + p[0], 0) / all.length, all.reduce((s, p) => s + p[1], 0) / all.length];
    const spread = all.length > 1 ? Math.hypot(all[0][0] - all[1][0], all[0][1] - all[1][1]) : 0;
    if (last && last.count === all.length) {
      view.isMoved = true;
      moved += Math.abs(middle[0] - last.middle[0]) + Math.abs(middle[1] - last.middle[1]);
      view.camera.left -= (middle[0] - last.middle[0]) / view.camera.scale;
      view.camera.up -= middle[1] - last.middle[1];
      if (spread > 0 && last.spread > 0) view.camera.zoom(spread / last.spread, ...middle);
      view.camera.clamp();
      view.changed();
    }
    last = { middle, spread, count: all.length };
  });

  const lift = e => {
    if (!pointers.delete(e.pointerId)) return;
    last = null;
    const carried = held && moved >= 6 ? held : null;
    const to = carried && view.carried;
    held = null;
    view.carry(null);
    if (carried) {
      if (e.type === 'pointerup' && to?.place) drop(carried, to.place);
      return;
    }
    if (e.type === 'pointerup' && pointers.size === 0 && moved < 6) press(view.at(...at(e)));
  };
  box.addEventListener('pointerup', lift);
  box.addEventListener('pointercancel', lift);
  box.addEventListener('pointerleave', () => { if (view.pointed) { view.pointed = null; view.changed(); } });
  box.addEventListener('dblclick', e => { zoomBy(view, 2.5, ...at(e)); });

  box.addEventListener('keydown', e => {
    if (e.target !== box || e.altKey || !view.data.map) return;
    if (e.ctrlKey || e.metaKey) {
      const place = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
      if (place && carryBy(view, place, drop)) e.preventDefault();
      return;
    }
    if (key(e.key, e.shiftKey, view)) e.preventDefault();
  });
}

/** The pressed name, one place earlier or later on its round. */
function carryBy(view, by, drop) {
  const name = view.pressed;
  if (!name || !view.canMove(name)) return false;
  const along = view.data.byRound[name.round].filter(n => n.kind === 'name').sort((a, b) => a.start - b.start);
  const other = along[along.findIndex(n => view.isPressed(n)) + by];
  if (other) drop(name, { other: other.text, isAfter: by > 0, round: view.data.map.rounds[name.round].number });
  return true;
}

function key(pressed, shift, view) {
  const to = Object.assign(new Camera(), view.way?.to ?? view.camera);
  const step = to.width / to.scale * (shift ? 0.9 : 0.15);
  switch (pressed) {
    case '+': case '=': to.zoomMiddle(1.5); break;
    case '-': case '_': to.zoomMiddle(1 / 1.5); break;
    case '0': to.whole(); break;
    case 'ArrowLeft': to.left -= step; break;
    case 'ArrowRight': to.left += step; break;
    case 'PageUp': to.left -= to.width / to.scale * 0.9; break;
    case 'PageDown': to.left += to.width / to.scale * 0.9; break;
    case 'ArrowUp': to.up -= shift ? to.lanePx : 40; break;
    case 'ArrowDown': to.up += shift ? to.lanePx : 40; break;
    case 'Home': to.left = -1e9; break;
    case 'End': to.left = 1e9; break;
    default: return false;
  }
  to.clamp();
  view.go(to);
  return true;
}

export function zoomBy(view, factor, px, py) {
  const to = Object.assign(new Camera(), view.way?.to ?? view.camera);
  if (px === undefined) to.zoomMiddle(factor); else to.zoom(factor, px, py);
  view.go(to);
}

export function showWhole(view) {
  const to = Object.assign(new Camera(), view.camera);
  to.whole();
  view.go(to);
}

export function only(view, round) {
  const to = Object.assign(new Camera(), view.camera);
  to.only = round;
  to.clamp();
  view.go(to, true);
}
