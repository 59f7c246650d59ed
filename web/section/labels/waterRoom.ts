import { type Cut, floorOf, leftAt, rightAt } from '../cut.ts';
import type { Scale } from '../scale.ts';
import type { LabelRequest } from './request.ts';

/** Depths at which the tints take dark text (down to) and white text (from), m: bands of 0.15 m, two pale, three deep. */
const PALE_TO = 0.3;
const DEEP_FROM = 0.45;
/** Kept free from the surface, the tint's border and the banks, px. */
const CLEAR = 4;
/** Least room worth words, px. */
const LEAST = 20;

/** A box across the water between two elevations, as wide as the banks leave at both. */
function boxBetween(cut: Cut, upper: number, lower: number, scale: Scale) {
  const left = Math.max(leftAt(cut, upper), leftAt(cut, lower));
  const right = Math.min(rightAt(cut, upper), rightAt(cut, lower));
  return {
    left: scale.x(left) + CLEAR,
    right: scale.x(right) - CLEAR,
    top: scale.y(upper) + CLEAR,
    bottom: scale.y(lower) - CLEAR,
  };
}

/**
 * Where words may stand in a basin's own water: in its deep tints, else in its pale ones.
 *
 * @param ground elevation of the floor or the top of what lies on it, m
 */
export function waterRoom(cut: Cut, level: number, ground: number, scale: Scale): LabelRequest['water'] {
  const floor = Math.max(floorOf(cut), ground);
  // Shallow bands lie under deep ones: of the deep water the lower half is narrower, so half of it is enough for words.
  const deep = boxBetween(cut, level - DEEP_FROM, Math.max(floor, level - DEEP_FROM - 60 / (scale.k * scale.a)), scale);
  if (deep.bottom - deep.top >= LEAST && level - DEEP_FROM > floor) return { box: deep, tint: 'deep' };
  const pale = boxBetween(cut, level, Math.max(floor, level - PALE_TO), scale);
  return pale.bottom - pale.top >= LEAST ? { box: pale, tint: 'pale' } : undefined;
}
