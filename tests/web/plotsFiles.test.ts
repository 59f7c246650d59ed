import { describe, expect, test } from 'vitest';
import { LOOKS, plotsCss } from '../../web/plots/looks.ts';
import { momentWords } from '../../web/plots/readings.ts';
import type { Line } from '../../web/plots/subjects.ts';
import { svgFile } from '../../web/plots/svg-file.ts';
import { clockToSecond, rowTimes, tableRows } from '../../web/plots/table.ts';
import { openAxis } from '../../web/plots/time-axis.ts';
import { path, words } from '../../web/section/marks.ts';

const starts = '2031-06-01T06:00';
const times = Float64Array.of(0, 7200);
const pond: Line = {
  key: 'pond',
  name: 'pond',
  measure: 'level',
  times,
  values: Float64Array.of(-0.1, -0.06),
  edge: 0,
  usual: true,
};

describe('the table', () => {
  const axis = openAxis(7200, [3540, 4320], 900);

  test('has the numbers that are drawn: straight between the rows of the run', () => {
    const rows = tableRows(axis, [pond], [{ t: 3600, what: 'pump off' }], starts, 'metric', 'depth');
    const stop = rows.find(({ t }) => t === 3600)!;
    expect(stop.clock).toBe('07:00:00');
    expect(stop.what).toBe('pump off');
    expect(stop.figures).toEqual(['80 mm below its edge']);
  });

  test('has a row for each event and both ends, in order, and more of them in the opened minutes', () => {
    const at = rowTimes(axis, [3601.5]);
    expect(at).toContain(3601.5);
    expect([at[0], at[at.length - 1]]).toEqual([0, 7200]);
    expect([...at].sort((a, b) => a - b)).toEqual(at);
    expect(at.filter((t) => t >= 3540 && t <= 4320).length).toBeGreaterThan(at.length / 2);
    expect(at.length).toBeLessThan(90);
  });

  test('says the clock to the second, over midnight with the day', () => {
    expect(clockToSecond(starts, 61.9)).toBe('06:01:01');
    expect(clockToSecond(starts, 86_400)).toBe('2 Jun 06:00:00');
  });
});

test('the moment is told by the clock and from the event', () => {
  expect(momentWords(3850, starts, { t: 3600, word: 'stop' })).toBe('07:04:10, 4 min 10 s after the stop');
  expect(momentWords(3590, starts, { t: 3600, word: 'stop' })).toBe('06:59:50, 10 s before the stop');
  expect(momentWords(3590, starts, { t: 3600, word: '0' })).toBe('06:59:50');
});

describe('the drawing as a file', () => {
  const marks = [path('M0 0H10', 'subject', { clip: 'levels' }), words(5, 5, 'edge < 1 & "2"', 'name in', 'end')];
  const clips = [{ id: 'levels', d: 'M0 0H10V10Z' }];
  const size = { left: -16, width: 300, top: -72, height: 200 };
  const dark = (name: string): string | undefined =>
    ({ '--water': '#7cc4ea', '--paper2': '#252d32', '--line': '1.5' })[name];

  test('has every color and width written in, and needs no page', () => {
    const text = svgFile(size, 'Courtyard', marks, clips);
    expect(text).toContain('stroke="#14588a" stroke-width="2"');
    expect(text).not.toMatch(/var\(|class=|NaN|undefined/);
    expect(text).toContain('viewBox="-16 -72 300 200"');
    expect(text).toContain('clip-path="url(#levels)"');
    expect(text).toContain('edge &lt; 1 &amp; &quot;2&quot;');
  });

  test('is drawn in the page’s look', () => {
    const text = svgFile(size, 'Courtyard', marks, clips, dark);
    expect(text).toContain('stroke="#7cc4ea" stroke-width="3"');
    expect(text).toContain('stroke="#252d32"');
  });

  test('and the page’s style sheet come from one table', () => {
    for (const name of Object.keys(LOOKS)) expect(plotsCss).toContain(`.${name} {`);
    expect(plotsCss).toContain('stroke: var(--water, #14588a)');
  });
});
