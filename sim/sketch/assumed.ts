import type { Assumption } from '../scenario/scenario.ts';
import { Draft } from './draft.ts';
import { fileOf, type Sketched } from './file.ts';
import type { SketchNumber, SketchValue } from './number.ts';
import { bandOfNumber, SKETCH_NUMBERS } from './numbers.ts';
import { displayOf, shown } from './shown.ts';
import { tidy } from './units.ts';

type Typed = ReadonlyMap<string, SketchValue>;

/**
 * The numbers that nobody typed and on which something of the site rests, each with its band. What a part beside the
 * sketch has settled rests on no number any more: another value would leave the file as it is.
 */
export function assumedIn(raw: Sketched, typed: Typed): Assumption[] {
  const site = new Draft(raw, typed);
  const plain = JSON.stringify(fileOf(site, raw));
  return SKETCH_NUMBERS.filter((each) => each.fallback && !site.isTyped(each.key)).flatMap((each) => {
    const value = site.value(each.key);
    const band = bandOfNumber(each, typeof value === 'number' ? value : 0, site);
    const rests = othersOf(each, band).some((other) => {
      const changed = new Draft(raw, new Map([...typed, [each.key, other]]));
      return JSON.stringify(fileOf(changed, raw)) !== plain;
    });
    if (!rests) return [];
    return [
      {
        place: `sketch.${each.key}`,
        value: told(value, raw),
        band: band && ([tidy(band[0]), tidy(band[1])] as const),
        from: 'sketch' as const,
      },
    ];
  });
}

const othersOf = (each: SketchNumber, band: readonly number[] | undefined): readonly SketchValue[] =>
  band ?? (each.other === undefined ? [] : [each.other]);

/** A value as a list of assumptions has it: a figure in SI, or words. */
function told(value: SketchValue, raw: Sketched): number | string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return tidy(value);
  const [first, second] = value as readonly unknown[];
  if (typeof first === 'number' && typeof second === 'number') return tidy(first / second);
  const display = displayOf(raw.sketch);
  const shelves = (value as readonly { depth: number; width: number }[]).map(
    ({ depth, width }) => `${shown(depth, 'length', display)} down, ${shown(width, 'length', display)} wide`,
  );
  return shelves.length > 0 ? shelves.join('; ') : 'none';
}
