/** Dimensions and the close-up of the pond's edge: what is written is what is drawn. */
import { describe, expect, test } from 'vitest';
import { detailOf, dimensionsOf, type LevelMark, levelMarksOf, measureText } from '../../web/section/labels/index.ts';
import { demoSites, subjectAt } from './labelsScene.ts';

const site = demoSites().find(({ name }) => name === 'storm.json')!;
const frame = { left: 0, top: 0, right: 400, bottom: 300 };
/** 100 px to the meter, the datum at y = 150. */
const yOf = (z: number): number => 150 - 100 * z;

describe('a dimension', () => {
  const request = { id: 'fall', upper: 0.62, lower: 0.18, x: 200, upperFrom: 170, lowerFrom: 200 };

  test('carries the height between its two elevations, whatever the scale', () => {
    const [metric] = dimensionsOf([request], yOf, 'metric', measureText, frame);
    expect(metric.text).toBe('440 mm');
    const [us] = dimensionsOf([request], yOf, 'us', measureText, frame);
    // 0.44 m / 0.0254 m = 17.32 in, by NIST SP 811 (2008): 17 3/8 to the eighth.
    expect(us.text).toBe('17 3/8 in');
  });

  test('is drawn from one elevation to the other with an oblique tick at each', () => {
    const [{ line, ticks }] = dimensionsOf([request], yOf, 'metric', measureText, frame);
    expect(line).toEqual([
      { x: 200, y: 88 },
      { x: 200, y: 132 },
    ]);
    expect(ticks.map(([a, b]) => [(a.x + b.x) / 2, (a.y + b.y) / 2])).toEqual([
      [200, 88],
      [200, 132],
    ]);
    for (const [a, b] of ticks) expect((b.x - a.x) * (b.y - a.y)).toBeLessThan(0);
  });

  test('has a thin line only to what stands off it', () => {
    const [{ extensions }] = dimensionsOf([request], yOf, 'metric', measureText, frame);
    expect(extensions).toEqual([
      [
        { x: 170, y: 88 },
        { x: 204, y: 88 },
      ],
    ]);
  });

  test('puts its figure on the other side where something stands on the first, and goes where both are taken', () => {
    const at = (left: number) => ({
      kind: 'line' as const,
      points: [
        { x: left, y: 0 },
        { x: left, y: 300 },
      ],
    });
    const [right] = dimensionsOf([request], yOf, 'metric', measureText, frame);
    const [left] = dimensionsOf([request], yOf, 'metric', measureText, frame, [at(220)]);
    expect([right.box.left > 200, left.box.right < 200]).toEqual([true, true]);
    expect(dimensionsOf([request], yOf, 'metric', measureText, frame, [at(220), at(180)])).toEqual([]);
  });

  test('is left out where its ticks would touch', () => {
    expect(dimensionsOf([{ ...request, lower: 0.55 }], yOf, 'metric', measureText, frame)).toEqual([]);
  });
});

describe('the detail', () => {
  const mark = (id: LevelMark['id'], name: string, elevation: number): LevelMark => ({ id, name, elevation });
  const marks = [
    mark('pond.rim', 'liner edge', 0),
    mark('highest', 'highest', -0.08),
    mark('pond.fillMark', 'fill mark', -0.11),
    mark('lowest', 'lowest', -0.117),
  ];
  const room = { left: 600, top: 10, right: 940, bottom: 190 };
  const by = { overflowWidth: 0, pxPerMeter: 130, room, display: 'metric' as const, measure: measureText };

  test('takes over where two marks lie under 4 px apart, and only there', () => {
    // 7 mm are 0.9 px at 130 px/m; at 600 px/m they are 4.2 px, and all others are more.
    expect(detailOf({ ...by, marks })).toBeDefined();
    expect(detailOf({ ...by, marks, pxPerMeter: 600 })).toBeUndefined();
  });

  test('is five times larger than the drawing, and says so', () => {
    const detail = detailOf({ ...by, marks })!;
    expect(detail.times).toBe(5);
    expect(detail.yOf(-0.08) - detail.yOf(0)).toBeCloseTo(5 * 130 * 0.08, 9);
    expect(detail.caption.text).toContain('five times larger');
  });

  test('is less large where five times do not fit, and says that', () => {
    const detail = detailOf({ ...by, marks, pxPerMeter: 250 })!;
    expect(detail.times).toBe(3);
    expect(detail.caption.text).toContain('three times larger');
    for (const { line } of detail.lines) {
      expect(line[0].y).toBeGreaterThan(detail.frame.top);
      expect(line[0].y).toBeLessThan(detail.frame.bottom);
    }
  });

  test('names every mark in it once, in the order of their height, no word on another', () => {
    const { words, room: all } = detailOf({ ...by, marks })!;
    expect(words.map(({ text }) => text)).toEqual([
      'liner edge 0 mm',
      'highest −80 mm',
      'fill mark −110 mm',
      'lowest −117 mm',
    ]);
    words.slice(1).forEach(({ box }, i) => {
      expect(box.top).toBeGreaterThanOrEqual(words[i].box.bottom);
      expect(box.right).toBeLessThanOrEqual(all.right);
    });
  });

  test('lets marks of one figure share their words', () => {
    const same = [...marks.slice(0, 3), mark('lowest', 'lowest', -0.11)];
    expect(detailOf({ ...by, marks: same })!.words.map(({ text }) => text)).toContain('fill mark, lowest −110 mm');
  });

  test('leaves out a mark far below that stands clear on the drawing', () => {
    const deep = [...marks.slice(0, 2), mark('pond.fillMark', 'fill mark', -0.09), mark('lowest', 'lowest', -0.9)];
    const detail = detailOf({ ...by, marks: deep })!;
    expect(detail.marks.map(({ id }) => id)).toEqual(['pond.rim', 'highest', 'pond.fillMark']);
    expect(detail.times).toBe(5);
  });

  test('measures the room that is left under the edge', () => {
    const detail = detailOf({ ...by, marks })!;
    const left = detail.dimensions.find(({ id }) => id === 'room')!;
    expect(left.text).toBe('80 mm');
    expect(left.line[1].y - left.line[0].y).toBeCloseTo(5 * 130 * 0.08, 9);
  });

  test('gives up where the room is too small', () => {
    expect(detailOf({ ...by, marks, room: { ...room, bottom: 60 } })).toBeUndefined();
    expect(detailOf({ ...by, marks, room: { ...room, right: 780 } })).toBeUndefined();
  });

  test('has the edge, the fill mark and the reached levels of a site as its file and its run have them', () => {
    const { scenario, answer } = subjectAt(site, 0, 'metric');
    const found = Object.fromEntries(levelMarksOf(scenario, answer).map(({ id, elevation }) => [id, elevation]));
    expect(found).toEqual({
      'pond.rim': Math.min(...scenario.pond.rim.crest.map(([, z]) => z)),
      'pond.overflow': scenario.pond.overflow!.elevation,
      'pond.fillMark': scenario.pond.fillMark,
      highest: answer.levels['pond'].max.value,
      lowest: answer.levels['pond'].min.value,
    });
  });
});
