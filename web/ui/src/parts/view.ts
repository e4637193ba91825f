// What part of an unrolled room the drawing shows.
//
// Sizes are in millimetres of the room, y downwards as the screen has it (a height h
// is y = −h). A view is its middle and how many millimetres one pixel covers; the size
// in pixels is the drawing's own.

export interface View {
  x: number;
  y: number;
  per: number; // millimetres in one pixel; > 0
}

export interface Size {
  width: number;
  height: number;
}

/** What may be looked at, in millimetres. */
export interface Extent {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** The view in which all is seen. */
export function whole(e: Extent, size: Size): View {
  const per = Math.max((e.right - e.left) / size.width, (e.bottom - e.top) / size.height);
  return { x: (e.left + e.right) / 2, y: (e.top + e.bottom) / 2, per: positive(per) };
}

/** The view that shows the full height, beginning at the left. */
export function tall(e: Extent, size: Size): View {
  const per = positive((e.bottom - e.top) / size.height);
  return kept({ x: e.left + (per * size.width) / 2, y: (e.top + e.bottom) / 2, per }, e, size);
}

function positive(per: number): number {
  return per > 0 && Number.isFinite(per) ? per : 1;
}

/** Moved by so many pixels of the drawing under the hand. */
export function panned(v: View, dx: number, dy: number): View {
  return { ...v, x: v.x - dx * v.per, y: v.y - dy * v.per };
}

/** Closer by a factor, the place (in pixels from the drawing's left top) staying where it is. */
export function zoomed(v: View, factor: number, at: { x: number; y: number }, size: Size): View {
  const dx = at.x - size.width / 2;
  const dy = at.y - size.height / 2;
  const per = v.per / factor;
  return { x: v.x + dx * (v.per - per), y: v.y + dy * (v.per - per), per };
}

const closest = 0.2; // millimetres in a pixel: a seam as wide as a finger

/** The nearest view that shows something: never further off than all, never past an end. */
export function kept(v: View, e: Extent, size: Size): View {
  const far = whole(e, size).per;
  const per = Math.min(Math.max(v.per, Math.min(closest, far)), far);
  return { x: within(v.x, e.left, e.right, per * size.width), y: within(v.y, e.top, e.bottom, per * size.height), per };
}

/** The middle of a window of that width that stays inside, or all of it in the middle. */
function within(middle: number, from: number, to: number, width: number): number {
  if (width >= to - from) return (from + to) / 2;
  return Math.min(Math.max(middle, from + width / 2), to - width / 2);
}

/**
 * The place along the band that one faces. It runs from end to end as the view does,
 * so that the first and the last wall are faced although the view stops at them; a view
 * that shows all faces nothing in particular (null).
 */
export function facing(v: View, e: Extent, size: Size): number | null {
  const free = e.right - e.left - v.per * size.width;
  if (free <= 0) return null;
  const part = (v.x - v.per * size.width / 2 - e.left) / free;
  return e.left + part * (e.right - e.left);
}

/** The view, as close as before, that faces a place. */
export function faced(x: number, v: View, e: Extent, size: Size): View {
  const w = v.per * size.width;
  const part = (x - e.left) / (e.right - e.left || 1);
  return kept({ ...v, x: e.left + w / 2 + part * (e.right - e.left - w) }, e, size);
}

/** As a viewBox. */
export function viewBox(v: View, size: Size): string {
  const w = v.per * size.width;
  const h = v.per * size.height;
  return `${v.x - w / 2} ${v.y - h / 2} ${w} ${h}`;
}

/** The place in the room under a pixel of the drawing: x along the band, height upwards. */
export function placeAt(v: View, px: { x: number; y: number }, size: Size): [number, number] {
  return [v.x + (px.x - size.width / 2) * v.per, (size.height / 2 - px.y) * v.per - v.y];
}
