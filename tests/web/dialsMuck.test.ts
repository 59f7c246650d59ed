/** The dial of what has settled in the media: along the course of a cleaning, and where the answer turns on it. */
import { describe, expect, test } from 'vitest';
import { care } from '../../sim/clogging/care.ts';
import { depositRoom } from '../../sim/laws/deposit.ts';
import { readSite } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt, withValuesAt } from '../../sim/studies/place.ts';
import { settingIn, withSetting } from '../../sim/studies/setting.ts';
import { failingSettings } from '../../sim/studies/turns.ts';
import { dialsFor, type Ruler } from '../../web/state/dials.ts';
import { moved, typedInto } from '../../web/state/dials-turned.ts';
import { wrongWords } from '../../web/state/dials-wrong.ts';
import { openDocument } from '../../web/state/document.ts';
import { turnWords } from '../../web/views/inputs/turn-words.ts';
import { siteText } from './sites.ts';

type Edits = readonly (readonly [string, unknown])[];

const fileWith = (name: string, edits: Edits = []): unknown => withValuesAt(JSON.parse(siteText(name)), edits);

function siteOf(file: unknown): Scenario {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

function muckOf(file: unknown): Ruler | undefined {
  const now = siteOf(file);
  const { shown, more } = dialsFor('filter', { now, base: now, file, opened: file, typed: new Map() });
  return [...shown, ...more].find((dial): dial is Ruler => dial.kind === 'ruler' && dial.name.startsWith('muck in'));
}

const depositsOf = (file: unknown): number[] => siteOf(file).filter!.media!.layers.map(({ deposit }) => deposit);
const documentOf = (file: unknown) => openDocument('a', JSON.stringify(file))!;

const file = fileWith('teaching-filter');
const dial = muckOf(file)!;

describe('the dial of the muck', () => {
  test('is that of the layer that catches most, from none to half of what it takes', () => {
    const [mat] = siteOf(file).filter!.media!.layers;
    expect(dial).toMatchObject({ name: 'muck in the fine mat', low: 0, value: 0, text: '0 L', step: 1e-4 });
    expect(dial.setting.place).toBe('filter.media.layers[0].deposit');
    expect(dial.high).toBeCloseTo(depositRoom(mat!.porosity, 1, 0.62 * 0.06) / 2 - 1e-4, 9);
    // The layer's capture times its thickness decides, not its place.
    const bags = fileWith('teaching-filter', [['filter.media.layers[1].capture', 6]]);
    expect(muckOf(bags)!.setting.place).toBe('filter.media.layers[1].deposit');
  });

  test('stands among the deciding ones only where something settles, or has', () => {
    expect(muckOf(fileWith('courtyard'))).toBeUndefined();
    expect(muckOf(fileWith('courtyard', [['filter.media.layers[0].capture', 2]]))).toBeDefined();
    const held = muckOf(fileWith('courtyard', [['filter.media.layers[1].deposit', '2 L']]))!;
    expect(held).toMatchObject({ name: 'muck in the bagged media', text: '2 L' });
    expect(muckOf(fileWith('courtyard', [['filter.media', undefined]]))).toBeUndefined();
  });

  test('moves all layers along the course of a cleaning', () => {
    const there = care(siteOf(file));
    if (!there.care) throw new Error(there.says);
    const { deposits } = there.course;
    for (const i of [3, 9, 15]) {
      const [mat, bags] = Object.values(deposits).map((held) => held[i]!);
      const [first, second] = depositsOf(withSetting(file, dial.setting, mat!));
      expect(first).toBeCloseTo(mat!, 12);
      expect(second! / bags!).toBeCloseTo(1, 9);
    }
  });

  test('fails above what has settled when the channeled share passes its limit', () => {
    const there = care(siteOf(file));
    if (!there.care || there.passing.when !== 'later') throw new Error('never');
    const { course, passing } = there;
    const next = course.t.findIndex((t) => t >= passing.t);
    const failing = failingSettings(file, dial.setting, 'filter', [dial.low, dial.high], dial.step / 2);
    expect(failing).toHaveLength(1);
    const [[from, to]] = failing as [[number, number]];
    const mat = course.deposits['fine mat']!;
    expect(from).toBeGreaterThan(mat[next - 1]! - dial.step);
    expect(from).toBeLessThan(mat[next]! + dial.step);
    expect(to).toBe(dial.high);
    expect(turnWords(dial, failing, 'metric')).toMatch(/^fails above [12](\.\d)? L$/);
    expect(turnWords(dial, failing, 'us')).toMatch(/^fails above 0\.\d{1,2} gal$/);
  });

  test.each(['metric', 'us'] as const)('turned to its ends in %s leaves a site that can be read', (display) => {
    const own = { ...(file as object), display };
    const there = muckOf(own)!;
    for (const to of [there.high, there.low, 0.5 * there.high]) {
      const turned = moved(documentOf(own), there, to);
      expect(Math.abs(settingIn(turned, there.setting)! - to)).toBeLessThanOrEqual(there.step);
      expect(valueAt(turned, there.setting.place)).toMatch(display === 'us' ? / gal$/ : / L$/);
      expect(readSite(turned)).toMatchObject({ ok: true });
    }
  });

  test('takes a typed figure, the others going along, and says what is wrong with one that does not fit', () => {
    const typed = typedInto(documentOf(file), dial, '2 L')!;
    expect(valueAt(typed.file, 'filter.media.layers[0].deposit')).toBe('2 L');
    expect(depositsOf(typed.file)[1]).toBeCloseTo(4.9e-4, 4);
    const bare = typedInto(documentOf(file), dial, '3')!;
    expect(depositsOf(bare.file)[0]).toBeCloseTo(0.003, 12);
    const wrong = (text: string): string => {
      const { file: put } = typedInto(documentOf(file), dial, text)!;
      const reading = readSite(put);
      return reading.ok ? '' : wrongWords(dial, put, reading.problems, 'metric', true);
    };
    expect(wrong('40 L')).toContain('It must be at most 27.9 L');
    expect(wrong('much')).toContain('Type it like 1.5 L.');
  });
});
