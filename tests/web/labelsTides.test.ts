/** Levels of the pond written on their own lines where the drawing is a strip, with the clock of the run. */
import { describe, expect, test } from 'vitest';
import { formatLevel } from '../../sim/quantity/index.ts';
import { detailOf, measureText, wordsOfScene } from '../../web/section/labels/index.ts';
import { levelMarksOf } from '../../web/section/labels/levelMarks.ts';
import { tideMarks } from '../../web/section/labels/tideMarks.ts';
import { demoSites, subjectAt, wordsRequest } from './labelsScene.ts';

const site = demoSites().find(({ name }) => name === 'low-edge.json')!;
const { max, min } = site.answer.levels['pond'];

describe('tide marks', () => {
  const request = wordsRequest(site, 390, 'metric');
  const { tides } = wordsOfScene(request);

  test('stand on their level with its clock time at one end and its figure at the other', () => {
    const lowest = tides.find(({ id }) => id === 'lowest')!;
    expect(lowest.elevation).toBe(min.value);
    const [named, figure] = lowest.ends;
    expect(figure.text).toBe(formatLevel(min.value, 'metric'));
    // The site starts at six on 8 July 2031: the clock is counted by hand from the run's own seconds.
    const hours = 6 + min.t / 3600;
    const clock = `${String(Math.floor(hours % 24)).padStart(2, '0')}:${String(Math.floor((hours * 60) % 60)).padStart(2, '0')}`;
    expect(named.text).toBe(`lowest ${8 + Math.floor(hours / 24)} Jul ${clock}`);
    for (const { at } of lowest.ends) {
      expect(Math.abs(at.y - request.scale.y(min.value))).toBeLessThan(16);
    }
  });

  test('are there on a strip alone', () => {
    expect(wordsOfScene(wordsRequest(site, 984, 'metric')).tides).toEqual([]);
  });

  test('are dark on pale water, white on deep, plain on the dry wall', () => {
    const lowest = tides.filter(({ id }) => id === 'lowest');
    const looks = (level: number) => tideMarks(lowest, level, request.scale).map(({ look }) => look);
    expect(looks(min.value + 0.15)).toEqual(['label figure pale', 'label figure pale']);
    expect(looks(min.value + 0.6)).toEqual(['label figure deep', 'label figure deep']);
    expect(looks(min.value - 0.2)).toEqual(['label figure', 'label figure']);
  });
});

test('the detail of a strip says when the pond stood highest', () => {
  const marks = levelMarksOf(site.scenario, site.answer);
  const room = { left: 0, top: 0, right: 420, bottom: 190 };
  const by = { marks, overflowWidth: 0, pxPerMeter: 150, room, display: 'metric' as const, measure: measureText };
  const texts = (clocks: boolean) => detailOf({ ...by, clocks })!.words.map(({ text }) => text);
  const { moment } = subjectAt(site, max.t, 'metric');
  expect(moment.levels['pond']).toBeCloseTo(max.value, 4);
  expect(texts(true).find((text) => text.includes('highest'))).toMatch(/, (\d Jul )?\d\d:\d\d$/);
  expect(texts(false).join()).not.toContain(':');
});
