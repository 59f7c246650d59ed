import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../sim/quantity/index.ts';
import { asTyped, type Manner, newlyWritten, shownAs, stepOf, toFile, unitFor } from '../../web/state/typed.ts';
import { feetAndInches, plainFractions, trueFractions } from '../../web/state/typed-inches.ts';

const metric: Manner = { display: 'metric', kept: false };
const us: Manner = { display: 'us', kept: false };
const kept = (manner: Manner): Manner => ({ ...manner, kept: true });

describe('figures moved on', () => {
  test.each([
    ['-110 mm', -0.0954, '-95 mm'],
    ['-4 3/8 in', -0.0254, '-1 in'],
    ['-4 3/8 in', -0.0953, '-3 3/4 in'],
    ['0.62 m', 0.6249, '0.625 m'],
    ['3 ft 6 in', 1.0922, '3 ft 7 in'],
    [`7'6"`, 2.2923, '7 ft 6 1/4 in'],
    ['30 1/4 in', 0.7684, '30 1/4 in'],
    [0.62, 0.6249, 0.625],
  ])('%s moved to %s m goes on as %s', (before, to, after) => {
    expect(asTyped(kept(metric))(to, before, 'length', false)).toBe(after);
  });

  test('go on in the units of the page where nobody typed the other ones', () => {
    expect(asTyped(us)(-0.1079, '-110 mm', 'length', false)).toBe('-4 1/4 in');
    expect(asTyped(metric)(-0.1079, '-4 3/8 in', 'length', false)).toBe('-108 mm');
    expect(asTyped(us)(6, '6.6 m2', 'area', false)).toBe('64.5 ft2');
    expect(asTyped(us)(0.5, '80 %', 'fraction', false)).toBe('50 %');
    expect(asTyped(us)(0.0254, undefined, 'length', false)).toBe('1 in');
    expect(asTyped(metric)(0.0254, undefined, 'length', false)).toBe('25 mm');
    expect(asTyped(metric)(0.5, undefined, 'fraction', false)).toBe(0.5);
    expect(newlyWritten(0.0006, 'flow', 'metric')).toBe('36 L/min');
  });

  test('that only go along keep their own unit, much finer than its step', () => {
    expect(asTyped(us)(0.0153, '15 mm', 'length', true)).toBe('15.3 mm');
    expect(asTyped(us)(0.01234, 0.01, 'length', true)).toBe(0.01234);
    expect(asTyped(us)(0.0254 * 2.015625, '2 in', 'length', true)).toBe('2 1/64 in');
  });

  test('are what they are moved to within half a step (1 in = 25.4 mm, NIST SP 811)', () => {
    const typed = fc.constantFrom('1 mm', '1 cm', '1 m', '1 in', '1 ft', '2 3/8 in', `7'6"`, '3 ft 6 in');
    const manner = fc.constantFrom(metric, us, kept(metric), kept(us));
    fc.assert(
      fc.property(typed, manner, fc.double({ min: -3, max: 3, noNaN: true }), (before, how, value) => {
        const written = asTyped(how)(value, before, 'length', false);
        const parsed = parseQuantity(String(written), 'length');
        expect(parsed.ok && Math.abs(parsed.value - value)).toBeLessThanOrEqual(
          stepOf(before, 'length', how) / 2 + 1e-9,
        );
        const inches = (unit: string | undefined): string | undefined => (unit === 'ft' ? 'in' : unit);
        expect(inches(unitFor(written, 'length', how))).toBe(inches(unitFor(before, 'length', how)));
      }),
    );
  });
});

describe('what a dial shows', () => {
  test.each([
    ['-110 mm', metric, '−110 mm'],
    ['-110 mm', us, '−4⅜ in'],
    ['-110 mm', kept(us), '−110 mm'],
    ['-4 3/8 in', metric, '−111 mm'],
    ['-4 3/8 in', us, '−4⅜ in'],
    ['0.62 m', us, '2 ft ⅜ in'],
    [`7'6"`, us, `7'6"`],
    [0, metric, '0 mm'],
    [0, us, '0 in'],
    [-0.11, metric, '−110 mm'],
    [-0.1105, metric, '−110.5 mm'],
    ['4 3/', metric, '4 3/'],
    ['abc', us, 'abc'],
    ['', us, ''],
  ] as const)('of a length %j in %j is %s', (value, manner, text) => {
    expect(shownAs(value, 'length', manner)).toBe(text);
  });

  test('of other figures is in the trade’s units', () => {
    expect(shownAs('14 L/min', 'flow', us)).toBe('3.7 gpm');
    expect(shownAs('14 L/min', 'flow', metric)).toBe('14 L/min');
    expect(shownAs('6.6 m2', 'area', metric)).toBe('6.6 m²');
    expect(shownAs('6.6 m2', 'area', us)).toBe('71 ft²');
    expect(shownAs('80 %', 'fraction', us)).toBe('80 %');
    expect(shownAs(0.8, 'fraction', us)).toBe('0.8');
  });

  test('reads back as what stands in the file, within half a step', () => {
    const manner = fc.constantFrom(metric, us);
    const unit = fc.constantFrom('mm', 'cm', 'm', 'in', 'ft');
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), unit, manner, (x, name, how) => {
        const value = `${x.toFixed(3)} ${name}`;
        const [file, shown] = [value, shownAs(value, 'length', how)].map((text) => parseQuantity(text, 'length'));
        if (!file?.ok || !shown?.ok) throw new Error(`${value} is not read`);
        expect(Math.abs(file.value - shown.value)).toBeLessThanOrEqual(stepOf(value, 'length', how) / 2 + 1e-9);
      }),
    );
  });
});

describe('what is put in a file for a typed text', () => {
  test.each([
    ['\u2212110 mm', '−100 mm', '-110 mm'],
    ['-0.2', '', -0.2],
    ['0.2', '0.3 m', '0.2 m'],
    ['5', '3.8 m2', '5 m2'],
    ['5', '3 ft 6 in', '5 in'],
    ['90', `7'6"`, '90 "'],
    ['-4 3/8', '−4⅜ in', '-4 3/8 in'],
    ['4⅜', '−4 in', '4⅜ in'],
    ['12', '0 mm', '12 mm'],
    ['5', '', 5],
    ['', '−4 in', ''],
    ['abc', '−4 in', 'abc'],
    ['-4 kg', '−4 in', '-4 kg'],
    ['4 3/', '−4 in', '4 3/'],
    ['grass run', 'stream', 'grass run'],
  ])('%j over %j is %j', (typed, before, value) => {
    expect(toFile(typed, before)).toBe(value);
  });
});

describe('inches', () => {
  test('are halves, quarters and eighths, in feet from two feet up', () => {
    expect(feetAndInches(-0.111125, 8, false)).toBe('-4 3/8 in');
    expect(feetAndInches(42 * 0.0254, 8, false)).toBe('3 ft 6 in');
    expect(feetAndInches(42 * 0.0254, 8, true)).toBe('42 in');
    expect(feetAndInches(23.95 * 0.0254, 8, false)).toBe('2 ft');
    expect(feetAndInches(-1e-5, 8, false)).toBe('0 in');
    expect(feetAndInches(0.0254 / 8, 8, false)).toBe('1/8 in');
  });

  test('have single characters for the fractions that have one, and lose nothing by it', () => {
    expect(trueFractions('-4 3/8 in')).toBe('-4⅜ in');
    expect(trueFractions('1-1/2 in')).toBe('1½ in');
    expect(trueFractions('3 5/64 in')).toBe('3 5/64 in');
    expect(trueFractions('11/2 in')).toBe('11/2 in');
    const eighths = fc.integer({ min: -400, max: 400 });
    fc.assert(
      fc.property(eighths, (n) => {
        const text = feetAndInches((n * 0.0254) / 8, 8, false);
        expect(plainFractions(trueFractions(text))).toBe(text);
        const parsed = parseQuantity(trueFractions(text), 'length');
        expect(parsed.ok && parsed.value).toBeCloseTo((n * 0.0254) / 8, 12);
      }),
    );
  });
});
