/** The hand in the weeks since a cleaning: what it puts into the file, and how it is found again there. */
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import { valueAt, withValuesAt } from '../../sim/studies/place.ts';
import { careGiven } from '../../web/engine/filter-answers.ts';
import type { FileEdits } from '../../web/engine/protocol.ts';
import {
  asCleaned,
  depositEdits,
  endOf,
  heldAt,
  liftingAt,
  nearest,
  settledIn,
  shareAt,
  sinceOf,
  standingWords,
  stepOf,
  weeksWords,
} from '../../web/filter/weeks-hand.ts';
import { shareAcross, weeksPlotMarks } from '../../web/filter/weeks-plot.ts';
import { textWidth } from '../../web/plots/text-width.ts';
import { siteText } from './sites.ts';

const [DAY, WEEK] = [86400, 604800];
const file: unknown = JSON.parse(siteText('teaching-filter'));

function siteOf(edited: unknown) {
  const reading = readScenario(JSON.stringify(edited));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

function careOf(edited: unknown) {
  const given = careGiven({ want: 'care', text: JSON.stringify(edited), display: 'metric' });
  if (given.kind !== 'care' || !given.care.care) throw new Error(JSON.stringify(given));
  return given.care;
}

const layers = siteOf(file).filter!.media!.layers;
const names = layers.map(({ name }) => name);
const care = careOf(file);
const { course } = care;
const editsAt = (time: number): FileEdits => depositEdits(names, heldAt(course, time), 'metric');

describe('the media of a week', () => {
  const times = Array.from({ length: 8 }, (_, i) => nearest(course, (endOf(course) * i) / 7));

  test.each(times)('%d s after a cleaning slip as much round as the balance of the site with them says', (time) => {
    const { channeled } = balance(siteOf(withValuesAt(file, editsAt(time))));
    // The course is straight between its points, at each of which the loss has grown by a tenth.
    expect(Math.abs(shareAt(course, time) - channeled!)).toBeLessThan(0.01 * Math.max(0.2, channeled!));
  });

  test.each(times)('%d s after a cleaning are found again in the file, and as the command finds them', (time) => {
    const there = withValuesAt(file, editsAt(time));
    expect(sinceOf(course, settledIn(there))).toBe(time);
    const { since } = careOf(there);
    expect(Math.abs(since! - time)).toBeLessThanOrEqual(1e-2 * time);
  });

  test('just cleaned leave no key behind, so that the file is as it was', () => {
    const there = withValuesAt(file, editsAt(3 * WEEK));
    expect(valueAt(there, 'filter.media.layers[0].deposit')).toMatch(/^0\.\d+ L$/);
    expect(JSON.stringify(withValuesAt(there, editsAt(0)))).toBe(JSON.stringify(file));
    expect(JSON.stringify(asCleaned(there))).toBe(JSON.stringify(file));
    expect(asCleaned(file)).toBe(file);
  });

  test('that hold more than the course are beyond it', () => {
    const there = withValuesAt(file, [['filter.media.layers[0].deposit', '20 L']]);
    expect(sinceOf(course, settledIn(there))).toBeNull();
    expect(standingWords(course, null)).toMatch(/^more than \d+(\.\d)? weeks uncleaned$/);
  });

  test('of inches are told in gallons', () => {
    const edits = depositEdits(names, { [names[0]!]: 0.003785411784, [names[1]!]: 0 }, 'us');
    expect(edits).toEqual([
      ['filter.media.layers[0].deposit', '1 gal'],
      ['filter.media.layers[1].deposit', undefined],
    ]);
  });

  test('are never written fuller than they are', () => {
    const { area } = siteOf(file).filter!.media!;
    const room = (layers[0]!.porosity - 0.15) * area * layers[0]!.thickness;
    for (const held of [room, 0.00123456, 1 / 3, 7e-7]) {
      const [[, text]] = depositEdits(['one'], { one: held }, 'metric') as [[string, string]];
      const back = Number.parseFloat(text) / 1000;
      expect(back).toBeLessThanOrEqual(held * (1 + 1e-12));
      expect(back).toBeGreaterThan(held * 0.999);
    }
  });
});

describe('the hand', () => {
  const lasting = (weeks: number) => ({ ...course, t: Float64Array.of(0, weeks * WEEK) });

  test('steps by weeks over years, by days over weeks, by hours over days', () => {
    expect([104, 30, 8, 1, 0.3].map((weeks) => stepOf(lasting(weeks)) / DAY)).toEqual([7, 3.5, 1, 0.25, 1 / 24]);
  });

  test('stays on the course', () => {
    expect(nearest(course, -WEEK)).toBe(0);
    expect(nearest(lasting(104.3), 1e9)).toBe(104 * WEEK);
    expect(endOf(course) - nearest(course, 1e9)).toBeLessThan(stepOf(course));
    expect(nearest(lasting(104), 6.4 * WEEK)).toBe(6 * WEEK);
  });

  test('goes across the plot from its first week to its last', () => {
    const marks = (since: number) => weeksPlotMarks({ ...care, since }, 400);
    const handAt = (since: number): number => {
      const hand = marks(since).find(({ look }) => look === 'hand');
      return Number(/^M([\d.]+)/.exec(hand?.kind === 'path' ? hand.d : '')?.[1]);
    };
    for (const part of [0, 0.3, 1]) expect(shareAcross(handAt(part * endOf(course)), 400)).toBeCloseTo(part, 3);
  });

  test('says the time and the share', () => {
    expect([WEEK, 2.5 * WEEK, 3 * DAY, DAY, 7 * 3600].map(weeksWords)).toEqual([
      ...['1 week', '2.5 weeks', '3 days', '1 day', '7 hours'],
    ]);
    expect(standingWords(course, 0)).toMatch(/^just cleaned: \d\.\d % slips round$/);
    expect(standingWords(course, 6 * WEEK)).toMatch(/^6 weeks uncleaned: \d\.\d % slips round$/);
  });
});

describe('the plot of the weeks', () => {
  test('marks the limit, the week that passes it and the week at which the media lift, in words', () => {
    const said = weeksPlotMarks({ ...care, since: 6 * WEEK }, 600).flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : [],
    );
    expect(said).toContain('10 % is the most wanted');
    if (care.passing.when !== 'later') throw new Error('never');
    expect(said).toContain(`clean by week ${(care.passing.t / WEEK).toFixed(1)}`);
    const lifts = liftingAt(course)!;
    expect(said).toContain(`week ${(lifts / WEEK).toFixed(1)}: the media lift`);
    // At the moment of lift the head across the media is w / (ρ g A), the weight over what carries it; a week before
    // and a week after it is not.
    const { area, submergedWeight } = siteOf(file).filter!.media!;
    const liftHead = submergedWeight / (999.1 * 9.80665 * area);
    const headAt = (time: number): number => balance(siteOf(withValuesAt(file, editsAt(time)))).mediaHead! / liftHead;
    expect(Math.abs(headAt(lifts) - 1)).toBeLessThan(1e-3);
    expect(headAt(lifts - 0.25 * WEEK)).toBeLessThan(0.995);
    expect(headAt(lifts + 0.25 * WEEK)).toBeGreaterThan(1.001);
    // The gap opens from there on, so that the share grows much faster.
    const growth = (from: number): number => shareAt(course, from + WEEK) - shareAt(course, from);
    expect(growth(lifts)).toBeGreaterThan(2 * growth(lifts - WEEK));
  });

  test('marks no lifting where the media do not lift within the course', () => {
    expect(liftingAt({ t: Float64Array.of(0, 1), lift: Float64Array.of(0.1, 0.5) })).toBeUndefined();
    expect(liftingAt({ t: Float64Array.of(0, 1), lift: Float64Array.of(1.1, 1.5) })).toBe(0);
    expect(liftingAt({ t: Float64Array.of(0, 2), lift: Float64Array.of(0.5, 1.5) })).toBe(1);
  });

  const own = JSON.parse(siteText('courtyard'));
  own.filter.media.layers[0].capture = 5;
  const sites: [string, number, ReturnType<typeof careOf>][] = [
    ['the teaching filter', 328, care],
    ['the teaching filter', 400, care],
    ['the teaching filter', 620, care],
    ['a wide gap', 328, careOf(withValuesAt(file, [['filter.media.gap', '5 mm']]))],
    ['a narrow gap', 328, careOf(withValuesAt(file, [['filter.media.gap', '0.5 mm']]))],
    ['muddy water', 328, careOf(withValuesAt(file, [['debris', 4e-5]]))],
    ['clear water', 620, careOf(withValuesAt(file, [['debris', 4e-8]]))],
    ['a coarse mat', 328, careOf({ ...own, debris: 1e-6 })],
  ];
  test.each(sites)('of %s has no words over others, over its curve, nor beyond its edges, at %d px', (...row) => {
    const [, width, care] = row;
    const { course } = care;
    for (let part = 0; part <= 1; part += 0.05) {
      const marks = weeksPlotMarks({ ...care, since: part * endOf(course) }, width);
      const boxes = marks.flatMap((mark) => {
        if (mark.kind !== 'text') return [];
        const wide = textWidth(mark.text, mark.look === 'axis' ? 12 : 13, mark.look === 'curve-name');
        const left = mark.x - (mark.at === 'end' ? wide : mark.at === 'middle' ? wide / 2 : 0);
        return [{ says: mark.text, left, right: left + wide, top: mark.y - 10, bottom: mark.y + 2 }];
      });
      const drawn = marks.find(({ look }) => look === 'by-media');
      const curve = [...(drawn?.kind === 'path' ? drawn.d : '').matchAll(/[ML]([\d.]+) ([\d.]+)/g)];
      for (const [i, a] of boxes.entries()) {
        expect(a.left, a.says).toBeGreaterThanOrEqual(-0.5);
        expect(a.right, a.says).toBeLessThanOrEqual(width + 0.5);
        for (const [, x, y] of curve) {
          const over = Number(x) > a.left && Number(x) < a.right && Number(y) > a.top && Number(y) < a.bottom;
          expect(over, `‘${a.says}’ over the curve at ${x}`).toBe(false);
        }
        for (const b of boxes.slice(i + 1)) {
          const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(apart, `‘${a.says}’ and ‘${b.says}’`).toBe(true);
        }
      }
    }
  });
});
