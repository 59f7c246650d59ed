import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keyMoved, passed, pixelsPerSecond, SPEEDS, speedWords } from '../../web/plots/pass.ts';
import { textWidth } from '../../web/plots/text-width.ts';
import { openAxis, openedOf, SHORTEST, seamsOf, withinRun } from '../../web/plots/time-axis.ts';
import { axisTicks, barTicks, stepFor } from '../../web/plots/time-ticks.ts';
import { brushed, endMoved, zoomed } from '../../web/plots/zoom.ts';

/** Two days with the pump's stop at the end of the first. */
const day = 86_400;
const axis = openAxis(2 * day, [day - 60, day + 720], 1000);
const starts = '2031-06-01T00:00';

describe('the opened axis', () => {
  test('gives about half its width to the window, and one scale to the hours at either side', () => {
    const [left, right] = openedOf(axis);
    expect(right - left).toBeCloseTo(510, 6);
    const [before, , after] = axis.pieces;
    const hours = (piece: typeof before): number => (piece!.right - piece!.left) / (piece!.to - piece!.from);
    expect(hours(before)).toBeCloseTo(hours(after), 12);
    expect(seamsOf(axis)).toEqual([left, right]);
  });

  test('is linear without a seam where all of the run is opened', () => {
    const whole = openAxis(day, [0, day], 480);
    expect(seamsOf(whole)).toEqual([]);
    expect(whole.x(day / 4)).toBe(120);
  });

  test('has one seam where the window lies at an end of the run', () => {
    expect(seamsOf(openAxis(day, [0, 720], 800)).length).toBe(1);
    expect(seamsOf(openAxis(day, [day - 720, day], 800)).length).toBe(1);
  });

  test('never presses a window together: one longer than half of the run has its share of the width', () => {
    const long = openAxis(1000, [100, 900], 1000);
    expect(openedOf(long)).toEqual([100, 900]);
  });

  const ofRuns = fc.record({
    span: fc.double({ min: 60, max: 1e7, noNaN: true }),
    a: fc.double({ min: 0, max: 1, noNaN: true }),
    b: fc.double({ min: 0, max: 1, noNaN: true }),
    width: fc.integer({ min: 200, max: 1400 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  });

  test('maps every moment to a px and back, in order, from end to end', () => {
    fc.assert(
      fc.property(ofRuns, ({ span, a, b, width, share }) => {
        const any = openAxis(span, [Math.min(a, b) * span, Math.max(a, b) * span], width);
        expect(any.x(0)).toBeCloseTo(0, 6);
        expect(any.x(span)).toBeCloseTo(width, 6);
        const x = share * width;
        expect(any.x(any.t(x))).toBeCloseTo(x, 5);
        expect(any.t(Math.min(width, x + 1))).toBeGreaterThanOrEqual(any.t(x));
      }),
      { seed: 11 },
    );
  });

  test('keeps a window in order, within the run, and no shorter than the shortest', () => {
    fc.assert(
      fc.property(ofRuns, ({ span, a, b }) => {
        const [from, to] = withinRun([(2 * a - 0.5) * span, (2 * b - 0.5) * span], span);
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeLessThanOrEqual(span + 1e-6);
        expect(to - from).toBeGreaterThanOrEqual(SHORTEST - 1e-6);
      }),
      { seed: 12 },
    );
  });
});

describe('ticks of the axis', () => {
  const ticks = axisTicks(axis, starts, { t: day, word: 'stop' });

  test('count minutes from the stop inside, and say the clock and the day beside', () => {
    const inside = ticks.filter(({ opened, label }) => opened && label).map(({ label }) => label);
    expect(inside).toContain('stop');
    expect(inside).toContain('+5');
    expect(inside[inside.length - 1]).toBe('+12 min');
    const beside = ticks.filter(({ opened, label }) => !opened && label).map(({ label }) => label);
    expect(beside).toContain('12:00');
    expect(beside).toContain('3 Jun');
  });

  test('stand where their moments do', () => {
    expect(ticks.find(({ label }) => label === 'stop')!.x).toBe(axis.x(day));
    expect(ticks.find(({ label }) => label === '+5')!.x).toBe(axis.x(day + 300));
  });

  test('have words that touch neither each other nor a seam, at any width and window', () => {
    for (const width of [280, 360, 700, 920, 1300]) {
      for (const length of [10, 60, 300, 780, 3600, 20_000, day]) {
        const any = openAxis(2 * day, [day - length / 10, day + length], width);
        const said = axisTicks(any, starts, { t: day, word: 'stop' }).filter(({ label }) => label);
        expect(said.length).toBeGreaterThan(1);
        const boxes = said.map(
          ({ at, label }) => [at - textWidth(label, 12) / 2, at + textWidth(label, 12) / 2] as const,
        );
        boxes.sort(([a], [b]) => a - b);
        boxes.forEach(([left, right], i) => {
          if (i > 0) expect(left).toBeGreaterThan(boxes[i - 1]![1]);
          for (const seam of seamsOf(any)) expect(left > seam || right < seam).toBe(true);
        });
      }
    }
  });

  test('of the bar are at one scale, and days where the run lasts a season', () => {
    const bar = barTicks(2 * day, starts, 960);
    const gaps = bar.slice(1).map(({ x }, i) => x - bar[i]!.x);
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 6);
    expect(barTicks(90 * day, starts, 960).every(({ label }) => /^\d+ \w{3}$/.test(label))).toBe(true);
  });

  test('fall on round steps', () => {
    expect(stepFor(1, 50)).toBe(60);
    expect(stepFor(100, 40)).toBe(7200);
  });
});

describe('letting time run', () => {
  test('goes at one speed over the screen, so slowly in the opened minutes and fast beside them', () => {
    const inside = passed(axis, day, 10) - day;
    const beside = passed(axis, 1000, 10) - 1000;
    expect(axis.x(day + inside) - axis.x(day)).toBeCloseTo(10, 6);
    expect(beside / inside).toBeGreaterThan(100);
    expect(passed(axis, 2 * day - 1, 10)).toBe(2 * day);
  });

  test('takes the time of its speed for the opened window', () => {
    const [left, right] = openedOf(axis);
    for (const speed of ['slowly', 'evenly', 'briskly'] as const)
      expect((right - left) / pixelsPerSecond(right - left, speed)).toBeCloseTo(SPEEDS[speed], 9);
    expect(speedWords(780, 'slowly')).toBe('1 min in 4.6 s');
  });

  test('by keys goes a second, a minute, an hour, and to the ends', () => {
    const held = { shiftKey: false, ctrlKey: false, altKey: false, metaKey: false };
    expect(keyMoved('ArrowRight', held, 100, day)).toBe(101);
    expect(keyMoved('ArrowLeft', { ...held, shiftKey: true }, 100, day)).toBe(40);
    expect(keyMoved('ArrowRight', { ...held, ctrlKey: true }, 100, day)).toBe(3700);
    expect(keyMoved('ArrowLeft', { ...held, ctrlKey: true }, 100, day)).toBe(0);
    expect(keyMoved('Home', held, 100, day)).toBe(0);
    expect(keyMoved('End', held, 100, day)).toBe(day);
    expect(keyMoved('a', held, 100, day)).toBeUndefined();
  });
});

describe('a window chosen by hand', () => {
  test('keeps the moment under the hand where it stands', () => {
    const [from, to] = zoomed([1000, 2000], 1250, 0.5, day);
    expect(to - from).toBe(500);
    expect((1250 - from) / (to - from)).toBeCloseTo(0.25, 12);
  });

  test('is about a moment beside it, and never longer than the run', () => {
    expect(zoomed([1000, 2000], 50_000, 1, day)).toEqual([49_500, 50_500]);
    expect(zoomed([1000, 2000], 1500, 1e6, day)).toEqual([0, day]);
  });

  test('brushed is the stretch, either way round; a touch moves it', () => {
    expect(brushed(3000, 2000, [0, 600], day)).toEqual([2000, 3000]);
    expect(brushed(5000, 5010, [0, 600], day)).toEqual([4700, 5300]);
  });

  test('has ends that push each other', () => {
    expect(endMoved([1000, 2000], 'from', 1500, day)).toEqual([1500, 2000]);
    expect(endMoved([1000, 2000], 'from', 3000, day)).toEqual([3000, 3000 + SHORTEST]);
    expect(endMoved([1000, 2000], 'to', 500, day)).toEqual([500 - SHORTEST, 500]);
  });
});
