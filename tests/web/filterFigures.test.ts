/** The figures beside the drawing, of the present case and of the one kept, and what has settled while a hand moves. */
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import type { DepositsGiven } from '../../web/engine/filter-asked.ts';
import { porositiesIn } from '../../web/filter/deposit.ts';
import type { Seen } from '../../web/filter/explanation.ts';
import { type FigureRow, figureRows } from '../../web/filter/figures.ts';
import { sinceStart } from '../../web/filter/settling.ts';
import { siteText } from './sites.ts';

type Edits = readonly (readonly [string, unknown])[];

/** The teaching filter as it runs in its balance. */
function seenWith(edits: Edits = []): Seen & { share: number } {
  const reading = readScenario(JSON.stringify(withValuesAt(JSON.parse(siteText('teaching-filter')), edits)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { scenario } = reading;
  const { levels, flows } = balance(scenario);
  const held = Object.fromEntries(scenario.filter!.media!.layers.map(({ name, deposit }) => [name, deposit]));
  return {
    scenario,
    moment: { t: 0, levels, flows },
    porosities: porositiesIn(scenario, held),
    share: flows['gap']! / (flows['gap']! + flows['media']!),
  };
}

const rowOf = (rows: readonly FigureRow[], name: RegExp): FigureRow => rows.find((row) => name.test(row.name))!;
/** '9.3 %' or '12 %' is within its last digit of a share. */
const isShare = (words: string, share: number): boolean =>
  Math.abs(Number.parseFloat(words) / 100 - share) <= (words.includes('.') ? 0.00051 : 0.0051);

const clean = seenWith();
const dirty = seenWith([
  ['filter.media.layers[0].deposit', '3 L'],
  ['filter.media.layers[1].deposit', '0.7 L'],
]);

describe('the figures of a moment', () => {
  test('are those of the balance, with what has settled', () => {
    const rows = figureRows(dirty);
    const round = rowOf(rows, /^goes round/).now;
    expect(isShare(round, dirty.share)).toBe(true);
    expect(dirty.share).toBeGreaterThan(1.5 * clean.share);
    expect(isShare(rowOf(rows, /^goes through/).now, 1 - dirty.share)).toBe(true);
    // 3 L of settled volume in the pores of 0.62 m² · 60 mm at 0.90.
    const { area } = dirty.scenario.filter!.media!;
    expect(isShare(rowOf(rows, /^pores of ‘fine mat’/).now, 0.003 / (area * 0.06 * 0.9))).toBe(true);
    expect(rows.every(({ kept }) => kept === '')).toBe(true);
  });

  test('stand beside those of the case kept, in one unit', () => {
    const rows = figureRows(dirty, clean);
    const round = rowOf(rows, /^goes round/);
    expect([isShare(round.kept, clean.share), isShare(round.now, dirty.share)]).toEqual([true, true]);
    expect(rowOf(rows, /^pores of ‘fine mat’/).kept).toBe('0.0 %');
    expect(rowOf(figureRows(clean, dirty), /^pores of ‘fine mat’/).now).toBe('0.0 %');
    expect(rowOf(rows, /^head lost/).name).not.toContain('as kept');
    const heavy = seenWith([['filter.media.submergedWeight', '90 N']]);
    expect(rowOf(figureRows(heavy, clean), /^head lost/).name).toMatch(/lifts them, as kept /);
  });

  test('of a case kept in which nothing flows are none, and there are none where nothing flows now', () => {
    const still: Seen = { ...clean, moment: { ...clean.moment, flows: {} } };
    expect(figureRows(dirty, still).every(({ kept }) => kept === 'none')).toBe(true);
    expect(figureRows(still, clean)).toEqual([]);
  });
});

describe('what has settled by a moment', () => {
  const given: DepositsGiven = {
    kind: 'deposits',
    t: Float64Array.of(0, 100),
    layers: { mat: Float64Array.of(1e-3, 2e-3), bags: Float64Array.of(0, 0) },
  };

  test('is what the run brings, whole or half of it', () => {
    expect(sinceStart({ mat: 1e-3, bags: 0 }, given, 50)).toEqual({ mat: 1.5e-3, bags: 0 });
  });

  test('starts at once from what a hand puts there, before the run is known', () => {
    expect(sinceStart({ mat: 4e-3, bags: 1e-3 }, given, 0)).toEqual({ mat: 4e-3, bags: 1e-3 });
    expect(sinceStart({ mat: 0, bags: 0 }, given, 100)).toEqual({ mat: 1e-3, bags: 0 });
    expect(sinceStart({ mat: 4e-3 }, undefined, 100)).toEqual({ mat: 4e-3 });
  });

  test('is what a cleaning leaves, once it is done', () => {
    const cleaned = { ...given, layers: { mat: Float64Array.of(1e-3, 0) } };
    expect(sinceStart({ mat: 1e-3 }, cleaned, 100)).toEqual({ mat: 0 });
    expect(sinceStart({ mat: 4e-3 }, cleaned, 100)).toEqual({ mat: 0 });
  });
});
