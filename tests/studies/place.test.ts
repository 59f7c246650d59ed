import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeKeys, valueAt, withValueAt } from '../../sim/studies/place.ts';
import { isReadable, placeOf, settingIn, withSetting } from '../../sim/studies/setting.ts';

describe('a place', () => {
  test.each([
    ['span', ['span']],
    ['pump.curve', ['pump', 'curve']],
    ['watercourse[0].stones[1].crest', ['watercourse', 0, 'stones', 1, 'crest']],
    ['limits["drain-back"][1]', ['limits', 'drain-back', 1]],
  ])('%s is its keys', (place, keys) => {
    expect(placeKeys(place)).toEqual(keys);
  });

  test('gives what stands there, and nothing where nothing does', () => {
    const file = { pool: [{ name: 'upper' }], limits: { 'drain-back': [1, 2] } };
    expect(valueAt(file, 'pool[0].name')).toBe('upper');
    expect(valueAt(file, 'limits["drain-back"][1]')).toBe(2);
    expect(valueAt(file, 'pool[1].name')).toBeUndefined();
    expect(valueAt(file, 'constructor')).toBeUndefined();
  });

  test('what is put there is found there, the rest untouched and the old file as it was', () => {
    const place = fc.constantFrom('a', 'b.c', 'list[0]', 'list[1].d', 'new.part[0].key');
    fc.assert(
      fc.property(place, fc.jsonValue(), (at, value) => {
        const file = { a: 1, b: { c: 2, z: { kept: true } }, list: [3, { d: 4 }] };
        const changed = withValueAt(file, at, value);
        expect(valueAt(changed, at)).toEqual(value);
        expect(valueAt(changed, 'b.z')).toBe(file.b.z);
        expect(file).toEqual({ a: 1, b: { c: 2, z: { kept: true } }, list: [3, { d: 4 }] });
      }),
    );
  });

  test('put to undefined takes a key away, and an item out of its list', () => {
    expect(withValueAt({ a: 1, b: 2 }, 'a', undefined)).toEqual({ b: 2 });
    expect(withValueAt({ list: [1, 2, 3] }, 'list[1]', undefined)).toEqual({ list: [1, 3] });
  });
});

describe('a setting', () => {
  const file = {
    mark: '-4 in',
    rim: [
      [0, '2 in'],
      ['1 m', 0.01],
      ['2 m', '30 mm'],
    ],
    float: { set: '-100 mm', low: '-120 mm' },
  };

  test('is read in SI from whatever unit it was typed in (NIST SP 811: 1 in = 25.4 mm)', () => {
    expect(settingIn(file, { kind: 'figure', place: 'mark', dimension: 'length' })).toBeCloseTo(-0.1016, 12);
    expect(settingIn(file, { kind: 'crest', place: 'rim' })).toBe(0.01);
    expect(settingIn(file, { kind: 'figure', place: 'none', dimension: 'length' })).toBeUndefined();
  });

  test('of a crest moves all its points by as much', () => {
    const moved = withSetting(file, { kind: 'crest', place: 'rim' }, 0.06) as typeof file;
    const heights = moved.rim.map(([, z]) => Number(z));
    [0.1008, 0.06, 0.08].forEach((z, i) => {
      expect(heights[i]).toBeCloseTo(z, 12);
    });
  });

  test('of a float moves the level of full flow along', () => {
    const moved = withSetting(file, { kind: 'float', place: 'float' }, -0.05) as typeof file;
    expect(Number(moved.float.set)).toBeCloseTo(-0.05, 12);
    expect(Number(moved.float.low)).toBeCloseTo(-0.07, 12);
  });
});

describe('a setting that moves more than one figure', () => {
  const pool = {
    profile: [
      ['0.4 m', '2 m2'],
      ['0.6 m', 3],
      ['0.8 m', '4 m2'],
    ],
  };
  const surface = { kind: 'areas', place: 'profile' } as const;

  test('by its area at the top changes those below in proportion', () => {
    expect(settingIn(pool, surface)).toBe(4);
    expect(withSetting(pool, surface, 6)).toEqual({
      profile: [
        ['0.4 m', 3],
        ['0.6 m', 4.5],
        ['0.8 m', 6],
      ],
    });
  });

  test('is named by the point of a crest that cannot be read, and moves no other', () => {
    const rim = [
      [0, '0 mm'],
      ['1 m', 'abc'],
      ['2 m', '-1 mm'],
    ];
    const crest = { kind: 'crest', place: 'rim' } as const;
    expect(placeOf({ rim }, crest)).toBe('rim[1][1]');
    expect(settingIn({ rim }, crest)).toBeUndefined();
    expect(isReadable({ rim }, crest)).toBe(false);
    expect(withSetting({ rim }, crest, 0.02)).toEqual({
      rim: [
        [0, '0 mm'],
        ['1 m', 0.02],
        ['2 m', '-1 mm'],
      ],
    });
  });

  test('is readable where all its figures are, and none is beyond a site', () => {
    const float = { kind: 'float', place: 'float' } as const;
    expect(isReadable({ float: { set: '-100 mm', low: '-120 mm' } }, float)).toBe(true);
    expect(isReadable({ float: { set: '1e99 m', low: '-120 mm' } }, float)).toBe(false);
    expect(isReadable({}, { kind: 'crest', place: 'rim' })).toBe(false);
  });
});
