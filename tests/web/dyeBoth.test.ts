/** The same dye poured into two cases: what the worker gives, how the curves are drawn, what the table tells. */
import { describe, expect, test } from 'vitest';
import { dyeTest } from '../../sim/dye/dyeTest.ts';
import { readScenario } from '../../sim/index.ts';
import { formatDuration, formatNumber } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { dyeGiven } from '../../web/engine/filter-answers.ts';
import type { DyeGiven } from '../../web/engine/filter-asked.ts';
import { bothDyesMarks } from '../../web/filter/dye-both-plot.ts';
import { dyePlotMarks, dyeScale } from '../../web/filter/dye-plot.ts';
import { dyeRows } from '../../web/filter/dye-rows.ts';
import { beyondWords } from '../../web/filter/dye-words.ts';
import { textWidth } from '../../web/plots/text-width.ts';
import type { Mark, TextMark } from '../../web/section/marks.ts';
import { siteText } from './sites.ts';

const AT = 3 * 3600;

function edited(change: (file: ReturnType<typeof JSON.parse>) => void): { text: string; scenario: Scenario } {
  const file = JSON.parse(siteText('courtyard'));
  change(file);
  const text = JSON.stringify(file);
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return { text, scenario: reading.scenario };
}

const withGap = (gap: string) =>
  edited((file) => {
    file.filter.media.gap = gap;
  });

function pouredInto(text: string, kept: { scenario: Scenario; at: number }): DyeGiven {
  const given = dyeGiven({ want: 'dye', text, display: undefined, at: AT, kept });
  if (given.kind !== 'dye') throw new Error(JSON.stringify(given));
  return given;
}

function figuresOf({ test: now, kept }: DyeGiven) {
  if (!now.fed || !kept?.test.fed) throw new Error('both are fed');
  return { now, kept: kept.test };
}

const wide = withGap('25 mm');
const tight = withGap('2 mm');
const both = pouredInto(wide.text, { scenario: tight.scenario, at: AT });
const { now, kept } = figuresOf(both);

describe('dye in the case kept', () => {
  test('has the figures that it has poured into that case alone, at its own moment', () => {
    const alone = dyeTest(tight.scenario, AT);
    expect(alone.fed && [alone.t10, alone.t50, alone.t90, alone.channeled]).toEqual([
      kept.t10,
      kept.t50,
      kept.t90,
      kept.channeled,
    ]);
    const later = pouredInto(wide.text, { scenario: tight.scenario, at: AT + 600 });
    expect(later.kept?.test.at).toBe(AT + 600);
    expect(later.test.at).toBe(AT);
  });

  test('is watched as long as the present one', () => {
    const spans = [both, both.kept].map((dye) => {
      if (!dye?.watch.poured) throw new Error('both are poured');
      const { t, at } = dye.watch;
      return t[t.length - 1]! - at;
    });
    expect(spans[0]).toBeCloseTo(spans[1]!, 6);
    expect(spans[0]).toBeGreaterThanOrEqual(1.5 * Math.max(now.t90, kept.t90) - 1e-6);
  });

  test('that stands or lies outside its run says so and leaves the present one alone', () => {
    const standing = edited((file) => {
      Object.assign(file, { start: 'standing', actions: [] });
      file.pump.running = false;
    });
    const stands = pouredInto(wide.text, { scenario: standing.scenario, at: AT });
    expect(stands.kept?.test.says).toContain('The pump stands');
    expect(stands.test.fed).toBe(true);
    const before = pouredInto(wide.text, { scenario: tight.scenario, at: -60 });
    expect(before.kept?.test.says).toContain('outside the run');
    expect(before.kept?.watch.poured).toBe(false);
  });
});

describe('two curves on one sheet', () => {
  const textsOf = (marks: readonly Mark[]): TextMark[] =>
    marks.filter((mark): mark is TextMark => mark.kind === 'text');
  const pathOf = (marks: readonly Mark[], look: string): string => {
    const found = marks.find((mark) => mark.kind === 'path' && mark.look === look);
    return found?.kind === 'path' ? found.d : '';
  };
  const pointsOf = (d: string): [number, number][] =>
    [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

  test.each([328, 500, 640])('are named without meeting anything named, and end in the sheet, at %i px', (width) => {
    for (const pair of [
      [now, kept],
      [kept, now],
      [now, now],
    ] as const) {
      const marks = bothDyesMarks(...pair, width, 100);
      const named = textsOf(marks).filter(({ look }) => look.startsWith('curve-name'));
      expect(named.map(({ text }) => text)).toEqual(expect.arrayContaining(['now', 'as kept']));
      const boxes = named.map(({ x, y, text }) => ({ x, y, right: x + textWidth(text, 13) }));
      for (const [i, a] of boxes.entries()) {
        expect(a.right).toBeLessThanOrEqual(width);
        for (const b of boxes.slice(i + 1))
          expect(a.x < b.right && b.x < a.right && Math.abs(a.y - b.y) < 13, JSON.stringify([a, b])).toBe(false);
      }
      for (const mark of marks) expect(JSON.stringify(mark)).not.toMatch(/NaN|Infinity/);
    }
  });

  test('stand on one scale: each is as high as its dye is dense', () => {
    const marks = bothDyesMarks(now, kept, 500, undefined);
    const { x, y, end, most } = dyeScale([now, kept], 500);
    const highest = (d: string): number => Math.min(...pointsOf(d).map(([, at]) => at));
    const peaks = [now, kept].map(({ E }) => Math.max(...E.through.map((each, i) => each + E.round[i]!)));
    expect(highest(pathOf(marks, 'by-media'))).toBeCloseTo(y(peaks[0]!), 0);
    expect(highest(pathOf(marks, 'as-kept'))).toBeCloseTo(y(peaks[1]!), 0);
    expect(most).toBeCloseTo(Math.max(...peaks), 12);
    expect(x(end)).toBeLessThanOrEqual(500);
  });

  test('lead from their names to themselves by lines that do not cross', () => {
    const marks = bothDyesMarks(now, kept, 500, undefined);
    const leaders = marks.flatMap((mark) => (mark.kind === 'path' && mark.look === 'leader' ? [mark.d] : []));
    expect(leaders).toHaveLength(2);
    const [a, b] = leaders.map((d) => (d.match(/-?[\d.]+/g) ?? []).map(Number));
    const on = (curve: string, [x, y]: readonly number[]): boolean =>
      pointsOf(pathOf(marks, curve)).some(([px, py]) => Math.hypot(px - x!, py - y!) < 0.2);
    expect(on('by-media', a!)).toBe(true);
    expect(on('as-kept', b!)).toBe(true);
  });

  test('a dye alone keeps its two ways apart', () => {
    const looks = dyePlotMarks(now, 500, undefined).map(({ look }) => look);
    expect(looks).toContain('by-gap');
    expect(looks).not.toContain('as-kept');
  });
});

describe('what is told of both', () => {
  test('is what the figures are, the present times to be gone to', () => {
    const rows = dyeRows(kept, now);
    expect(rows.map(({ name }) => name)).toEqual([
      'goes through',
      'goes round',
      'first tenth',
      'half',
      'nine tenths',
      'spread, t90 over t10',
    ]);
    expect(rows[3]).toEqual({
      name: 'half',
      kept: formatDuration(kept.t50),
      now: formatDuration(now.t50),
      after: now.t50,
    });
    expect(rows[5]?.now).toBe(formatNumber(now.t90 / now.t10, 1));
  });

  test('and what is out of each by a moment', () => {
    if (!both.watch.poured) throw new Error('poured');
    expect(beyondWords(both.watch, AT - 30)).toBe('the dye is poured 30 s from now');
    const out = Number(/^([\d.]+) % of the dye is out after/.exec(beyondWords(both.watch, AT + now.t50))?.[1]);
    expect(Math.abs(out - 50)).toBeLessThanOrEqual(3);
  });
});
