/** Words on the drawing of every demonstration site and of random ones, at all widths and in both displays. */
import { describe, expect, test } from 'vitest';
import type { Box, LabelTask, Placed, Point } from '../../web/section/labels/index.ts';
import {
  labelTask,
  labelTexts,
  measureText,
  reworded,
  roomyTexts,
  wordsOfScene,
} from '../../web/section/labels/index.ts';
import { meetsBox, readied } from '../../web/section/labels/obstacles.ts';
import { placeLabels } from '../../web/section/labels/place.ts';
import { demoSites, type Known, randomSites, subjectAt, wordsRequest } from './labelsScene.ts';

const sites = [...demoSites(), ...randomSites(20)];
const widths = [360, 390, 800, 1100, 1440];
const displays = ['metric', 'us'] as const;

/** Boxes round a label's lines as measured, each by itself: nothing taken from the box the placing reserved. */
const textBoxes = (label: Placed): Box[] =>
  label.lines.map(({ text, style, x, y }) => ({
    left: x,
    right: x + measureText(text, style),
    top: y - 10,
    bottom: y + 3,
  }));

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const crosses = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const side = (p: Point, q: Point, r: Point): number =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
};

interface Sheet {
  readonly at: string;
  readonly task: LabelTask;
  readonly labels: readonly Placed[];
}

/** The words of a site at every width and in both displays. */
const sheetsOf = (site: Known): Sheet[] =>
  widths.flatMap((width) =>
    displays.map((display): Sheet => {
      const task = labelTask(wordsRequest(site, width, display));
      const labels = placeLabels(task.requests, task.obstacles, task.bounds, measureText);
      return { at: `${site.name} at ${width} px in ${display}`, task, labels };
    }),
  );

const cases = sites.map((site) => ({ name: site.name, site, sheets: sheetsOf(site) }));

describe.each(cases)('on the drawing of $name', ({ site, sheets }) => {
  test('no text overlaps another, the detail or a dimension, and none leaves the frame', () => {
    for (const { task, labels, at } of sheets) {
      const { drawn, bounds } = task;
      const words = labels.flatMap((label) => textBoxes(label).map((box) => ({ box, of: label.id })));
      words.push(...drawn.dimensions.map(({ box, id }) => ({ box, of: `dimension ${id}` })));
      words.push(...drawn.tides.flatMap(({ id, ends }) => ends.map(({ box }) => ({ box, of: `tide mark ${id}` }))));
      if (drawn.detail) words.push({ box: drawn.detail.room, of: 'detail' });
      for (const [i, { box, of }] of words.entries()) {
        const { frame } = bounds;
        const inside = box.left >= frame.left - 0.01 && box.right <= frame.right + 0.01 && box.top >= 0;
        expect(inside && box.bottom <= frame.bottom, `${of} inside, ${at}`).toBe(true);
        for (const other of words.slice(i + 1)) {
          if (other.of !== of) expect(overlap(box, other.box), `${of} on ${other.of}, ${at}`).toBe(false);
        }
      }
    }
  });

  test('no text lies on a stone, pipe, nappe, line or on water that is not its own', () => {
    for (const { task, labels, at } of sheets) {
      const { obstacles } = task;
      const ready = obstacles.flatMap(readied);
      for (const { id, seat, box } of labels) {
        const met = ready.filter((o) => meetsBox(o, box) && !(seat === 'inside water' && o.of === id));
        expect(
          met.map((o) => `${o.kind} ${o.of}`),
          `${id}, ${at}`,
        ).toEqual([]);
      }
    }
  });

  test('no two leaders cross', () => {
    for (const { labels, at } of sheets) {
      const legs = labels.flatMap(({ id, leader }) => leader.slice(1).map((to, i) => ({ id, from: leader[i], to })));
      for (const [i, a] of legs.entries()) {
        for (const b of legs.slice(i + 1)) {
          if (a.id !== b.id) expect(crosses(a.from, a.to, b.from, b.to), `${a.id} and ${b.id}, ${at}`).toBe(false);
        }
      }
    }
  });

  test('words of other moments stay in their seats', () => {
    for (const display of displays) {
      const request = wordsRequest(site, 984, display);
      const { labels, detail } = wordsOfScene(request);
      for (const t of [0, 0.3, 0.7, 1].map((share) => share * site.scenario.span)) {
        const now = reworded(labels, labelTexts(subjectAt(site, t, display)), measureText);
        for (const [i, label] of now.entries()) {
          for (const box of textBoxes(label)) {
            expect(box.right).toBeLessThanOrEqual(labels[i].box.right + 3.01);
            expect(box.left).toBeGreaterThanOrEqual(labels[i].box.left - 3.01);
            if (detail) expect(overlap(box, detail.room), `${label.id} on the detail`).toBe(false);
          }
        }
      }
    }
  });
});

test('on a desk most parts of a site have words with their figures', () => {
  for (const site of sites.filter(({ name }) => name.endsWith('.json'))) {
    const request = wordsRequest(site, 984, 'metric');
    const { labels, byPress } = wordsOfScene(request);
    const all = roomyTexts(request.subject, measureText).length;
    const full = labels.filter(({ form }) => form !== 'figure dropped').length;
    expect(full / all, `${site.name}, by press: ${byPress.join(', ')}`).toBeGreaterThan(0.75);
  }
});
