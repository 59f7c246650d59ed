/** The map as it is drawn: pixels and places, words that keep clear of each other, hands and keys, the table. */
import { describe, expect, test } from 'vitest';
import type { OperatingMap } from '../../sim/map/answer.ts';
import { operatingMap } from '../../sim/map/map.ts';
import { mapGiven } from '../../web/engine/map-answers.ts';
import { drawMap } from '../../web/map/drawing.ts';
import { familiesOf, firstShown, levelsOf } from '../../web/map/families.ts';
import { SIZE } from '../../web/map/labels.ts';
import { keyed, rulersOf, stepsOf, toStep, valueAt } from '../../web/map/ruler.ts';
import { pixelAt, placeAt, sheetFor } from '../../web/map/sheet.ts';
import { tableOf } from '../../web/map/table.ts';
import { textWidth } from '../../web/plots/text-width.ts';
import { felted, siteOf } from '../map/sites.ts';

function mapOf(site: ReturnType<typeof siteOf>): OperatingMap {
  const map = operatingMap(site, { n: 19 });
  if (!map.ok) throw new Error(map.says);
  return map;
}

const felt = mapOf(siteOf('courtyard', felted));
const plain = mapOf(siteOf('courtyard'));

describe('a sheet', () => {
  test.each([320, 480, 760, 1200])('of %i px holds the plane, and a place comes back from its pixel', (width) => {
    const sheet = sheetFor(felt, width);
    expect(sheet.width).toBeLessThanOrEqual(width);
    for (const place of [
      [0, 0],
      [0.3, 0.8],
      [1, 1],
    ] as const) {
      const [x, y] = placeAt(sheet, pixelAt(sheet, place));
      expect(x).toBeCloseTo(place[0], 12);
      expect(y).toBeCloseTo(place[1], 12);
    }
    expect(placeAt(sheet, [-50, 9999])).toEqual([0, 0]);
  });
});

describe('words on a map', () => {
  const cases = [felt, plain, mapOf(siteOf('teaching-filter'))].flatMap((map) =>
    (['metric', 'us'] as const).flatMap((display) => [260, 330, 700].map((width) => ({ map, display, width }))),
  );
  test.each(cases)(
    'keep clear of each other, of its edge and of the point ($display, $width px)',
    ({ map, display, width }) => {
      const families = familiesOf(map, display);
      const sheet = sheetFor(map, width);
      const at = [0.5, 0.3] as const;
      const { words } = drawMap(map, families, sheet, at);
      expect(words.length).toBeGreaterThan(4);
      const boxes = words.map(({ text, x, y, italic }) => {
        const half = textWidth(text, SIZE, italic) / 2;
        return { left: x - half, right: x + half, top: y - 10, bottom: y + 3 };
      });
      const [px, py] = pixelAt(sheet, at);
      for (const [i, a] of boxes.entries()) {
        expect(a.left).toBeGreaterThan(sheet.left);
        expect(a.right).toBeLessThan(sheet.left + sheet.across);
        expect(px > a.left && px < a.right && py > a.top && py < a.bottom).toBe(false);
        for (const b of boxes.slice(i + 1))
          expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
      }
    },
  );

  test('say once for each family what its figure is of, in round levels', () => {
    const families = familiesOf(felt, 'metric').filter(({ figure }) => figure === 'stone' || figure === 'pore');
    const { words, lines } = drawMap(felt, families, sheetFor(felt, 700), [0.5, 0.3]);
    const said = words.map(({ text }) => text);
    expect(said.filter((text) => text.endsWith('over ‘broad stone’'))).toHaveLength(1);
    expect(said.filter((text) => text.endsWith('in the media'))).toHaveLength(1);
    expect(said).toContain('all checks hold');
    expect(said.filter((text) => text === 'media float up')).toHaveLength(1);
    expect(new Set(lines.map(({ look }) => look))).toEqual(new Set(['onset', 'border', 'stone', 'pore']));
    for (const family of families)
      for (const level of levelsOf(felt, family, 4)) expect((level / family.unit) % 1).toBeCloseTo(0, 6);
  });

  test('name a check that fails in a corner beside its border', () => {
    const teaching = mapOf(siteOf('teaching-filter'));
    for (const width of [330, 700]) {
      const sheet = sheetFor(teaching, width);
      const { words } = drawMap(teaching, [], sheet, [0.5, 0.5]);
      const named = words.find(({ text }) => text === 'velocity fails beyond');
      expect(named?.x).toBeLessThan(sheet.left + sheet.across / 2);
      expect(named?.y).toBeLessThan(sheet.top + sheet.down / 2);
    }
  });

  test('at first the flow over the stone, and what changes in the filter', () => {
    expect(firstShown(felt, familiesOf(felt, 'metric'))).toEqual(['stone', 'channeled']);
    expect(firstShown(plain, familiesOf(plain, 'metric'))).toEqual(['stone', 'pore']);
  });
});

describe('a hand', () => {
  test('sets whole degrees, keys among them', () => {
    const { x } = rulersOf(felt);
    const openingAt = (degrees: number): number => valueAt(x, degrees);
    expect(openingAt(36)).toBe(0.4);
    expect(openingAt(-3)).toBe(0);
    expect(toStep(x, 0.7777)).toBe(0.7778);
    for (let degrees = 0; degrees <= 90; degrees++) expect(stepsOf(x, openingAt(degrees))).toBe(degrees);
    expect(keyed(x, 'ArrowUp', openingAt(30))).toBe(openingAt(31));
    expect(keyed(x, 'PageDown', openingAt(10))).toBe(0);
    expect([keyed(x, 'Home', 0.5), keyed(x, 'End', 0.5), keyed(x, 'x', 0.5)]).toEqual([0, 1, undefined]);
  });

  test('sets whole percents of speed and share, no slower than the plane goes', () => {
    const { x, y } = rulersOf({ plane: 'flow', x: [0.4, 0.7, 1], y: [0, 1] });
    expect(keyed(x, 'ArrowLeft', 0.8)).toBe(0.79);
    expect([keyed(x, 'Home', 0.8), keyed(x, 'PageDown', 0.45), keyed(x, 'PageUp', 0.95)]).toEqual([0.4, 0.4, 1]);
    expect([keyed(y, 'ArrowUp', 0.634), keyed(y, 'PageDown', 0.05)]).toEqual([0.64, 0]);
    expect([x.words(0.8), y.words(0)]).toEqual(['80 %', '0 %']);
  });
});

describe('the table', () => {
  test('tells the map’s own points every 15°', () => {
    const { rows, columns } = tableOf(
      felt,
      familiesOf(felt, 'metric').find(({ figure }) => figure === 'stone'),
    );
    expect(columns).toEqual(['shut', '75° closed', '60° closed', '45° closed', '30° closed', '15° closed', 'open']);
    expect(rows.map(({ name }) => name)).toEqual([...columns].reverse());
    const point = felt.points.find(({ x, y }) => Math.abs(x - 2 / 3) < 1e-9 && Math.abs(y - 0.5) < 1e-9);
    expect(rows[3].cells[4]).toBe(`${((point?.stone ?? 0) * 60000).toFixed(0)} L/min`);
    expect(tableOf(felt, undefined).rows[6].cells[0]).toBe('falls');
  });
});

test('the worker answers with the map and its sentences, or with what is wrong with the file', () => {
  expect(mapGiven({ want: 'map', text: '{', display: undefined, plane: 'valves' }).kind).toBe('refused');
});
