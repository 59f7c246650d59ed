import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readScenario } from '../../sim/index.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import { careGiven, cleanerGiven } from '../../web/engine/filter-answers.ts';
import type { FileEdits } from '../../web/engine/protocol.ts';
import { weeksPlotMarks } from '../../web/filter/weeks-plot.ts';

const file: unknown = JSON.parse(
  readFileSync(new URL('../../scenarios/teaching-filter.json', import.meta.url), 'utf8'),
);
const textWith = (...edits: FileEdits): string => JSON.stringify(withValuesAt(file, edits));

function siteWith(...edits: FileEdits) {
  const reading = readScenario(textWith(...edits));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

function careWith(...edits: FileEdits) {
  const given = careGiven({ want: 'care', text: textWith(...edits), display: 'metric' });
  if (given.kind !== 'care') throw new Error(JSON.stringify(given));
  return given.care;
}

describe('the weeks between cleanings', () => {
  test('are drawn from the clean share up, past the limit at the moment told', () => {
    const care = careWith(['debris', 2e-6]);
    if (!care.care) throw new Error(care.says);
    expect(care.passing.when).toBe('later');
    const marks = weeksPlotMarks(care, 400);
    const curve = marks.find((mark) => mark.kind === 'path' && mark.look === 'by-media');
    const points = [...(curve?.kind === 'path' ? curve.d : '').matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    expect(points).toHaveLength(care.course.t.length);
    const limitAt = Number(/M[\d.]+ ([\d.]+)/.exec(lookOf(marks, 'tenth'))?.[1]);
    const passAt = Number(/M([\d.]+) /.exec(lookOf(marks, 'turn'))?.[1]);
    // Up is smaller: before the moment of passing the curve lies below the limit, after it above.
    for (const [x, y] of points) if (Math.abs(x! - passAt) > 2) expect(y! > limitAt).toBe(x! < passAt);
  });

  test('twice the muck halves them', () => {
    const [once, twice] = [careWith(['debris', 2e-6]), careWith(['debris', 4e-6])];
    if (!once.care || !twice.care || once.passing.when !== 'later' || twice.passing.when !== 'later')
      throw new Error('never');
    expect(twice.passing.t / once.passing.t).toBeCloseTo(0.5, 6);
  });

  test('are none where nothing settles, which is said', () => {
    const care = careWith(['debris', 0]);
    expect(care).toMatchObject({ care: false, says: expect.stringContaining('no debris') });
  });
});

describe('two cases of one pond', () => {
  test('are compared by how clean they keep it, and it is said to be no test', () => {
    const { kind, ...given } = cleanerGiven({
      want: 'cleaner',
      sites: [siteWith(), siteWith(['filter.media.gap', '15 mm'])],
    });
    expect(kind).toBe('cleaner');
    expect(given).toMatchObject({
      says: expect.stringMatching(/^‘as kept’ keeps the pond .* times as clean as ‘now’/),
    });
    expect(given).toMatchObject({ says: expect.stringContaining('test') });
  });

  test('of which neither takes anything out are not', () => {
    const idle = siteWith(['filter.media.removal', 0]);
    expect(cleanerGiven({ want: 'cleaner', sites: [idle, idle] })).toEqual({ kind: 'cleaner', says: '' });
  });
});

function lookOf(marks: ReturnType<typeof weeksPlotMarks>, look: string): string {
  const mark = marks.find((each) => each.look === look);
  return mark?.kind === 'path' ? mark.d : '';
}
