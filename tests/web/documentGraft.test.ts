/** Edits of a site from a sketch: made on what it comes to, kept beside it. */
import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import { expandSketch } from '../../sim/sketch/expand.ts';
import { valueAt, withValueAt } from '../../sim/studies/place.ts';
import { settingIn, withSetting } from '../../sim/studies/setting.ts';
import { grafted } from '../../web/state/graft.ts';

const sketch = {
  title: 'mine',
  sketch: { length: '10 ft', width: '8 ft', depth: '2 ft', pump: { flow: '3000 gph', head: '20 ft' } },
};
const plain = expandSketch(sketch, { listed: false }).file;
const lowest = (file: unknown): number => {
  const read = readSite(file);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return Math.min(...read.scenario.pond.rim.crest.map(([, z]) => z));
};

describe('an edit of a sketch’s part', () => {
  test('is laid beside the sketch and is what the site is read with', () => {
    const moved = withSetting(plain, { kind: 'crest', place: 'pond.rim.crest' }, 0.2);
    const file = grafted(sketch, plain, moved);
    expect(lowest(file)).toBeCloseTo(0.2, 9);
    expect(Object.keys(file as object).sort()).toEqual(['pond', 'sketch', 'title']);
    expect(Object.keys(valueAt(file, 'pond') as object)).toEqual(['rim']);
  });

  test('takes whole lists along, and keeps what stood beside the sketch already', () => {
    const first = grafted(sketch, plain, withValueAt(plain, 'plumbing.bottomFeed.valve', 0.5));
    const stone = { kind: 'crest', place: 'watercourse[0].stones[0].crest' } as const;
    const now = expandSketch(first, { listed: false }).file;
    const second = grafted(first, now, withSetting(now, stone, (settingIn(now, stone) ?? 0) + 0.004));
    expect(valueAt(second, 'plumbing.bottomFeed.valve')).toBe(0.5);
    expect(valueAt(second, 'watercourse')).toHaveLength((valueAt(plain, 'watercourse') as unknown[]).length);
    expect(readSite(second)).toMatchObject({ ok: true });
  });

  test('that changes nothing leaves the file as it is', () => {
    expect(grafted(sketch, plain, plain)).toEqual(sketch);
  });

  test('of a file without a sketch is the file as it was changed', () => {
    const changed = { title: 'other' };
    expect(grafted({ title: 'one' }, null, changed)).toBe(changed);
  });
});
