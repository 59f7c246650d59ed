import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  DIMENSIONS,
  type DimensionName,
  formatClock,
  formatDepthRate,
  formatDuration,
  formatFine,
  formatFlow,
  formatHead,
  formatLength,
  formatLevel,
  formatNumber,
  formatPercent,
  formatTemperature,
  formatVolume,
  momentText,
  monthLength,
  parseMoment,
  parseQuantity,
  parseTimeOfDay,
  quantityText,
  toSI,
} from '../../sim/quantity/index.ts';

const value = (text: string, dimension: DimensionName): number => {
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? parsed.value : Number.NaN;
};

const complaint = (text: string, dimension: DimensionName): string => {
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? '' : `${parsed.found} | ${parsed.wanted}`;
};

describe('units', () => {
  /**
   * NIST Special Publication 811 (2008), Appendix B.8, to the seven figures printed there (from memory; those in bold
   * type there are exact). Composed units follow from its rules: gallon per hour is gallon over 3600 s.
   */
  const NIST: readonly (readonly [DimensionName, string, number])[] = [
    ['length', 'in', 2.54e-2],
    ['length', 'ft', 3.048e-1],
    ['area', 'in2', 6.4516e-4],
    ['area', 'ft2', 9.290304e-2],
    ['volume', 'gal', 3.785412e-3],
    ['volume', 'ft3', 2.831685e-2],
    ['volume', 'L', 1e-3],
    ['flow', 'gpm', 6.30902e-5],
    ['flow', 'gph', 3.785412e-3 / 3600],
    ['flow', 'L/min', 1.666667e-5],
    ['time', 'd', 8.64e4],
    ['time', 'h', 3.6e3],
    ['pressure', 'psi', 6.894757e3],
    ['pressure', 'bar', 1e5],
    ['force', 'kgf', 9.80665],
    ['force', 'lbf', 4.448222],
    ['speed', 'ft/s', 3.048e-1],
    ['depthRate', 'in/h', 7.055556e-6],
    ['depthRate', 'in/week', 0.0254 / 604800],
    ['massRate', 'g/d', 1e-3 / 86400],
    ['concentration', 'mg/L', 1e-3],
  ];

  test.each(NIST)('a %s of 1 %s is what NIST SP 811 says', (dimension, unit, factor) => {
    expect(value(`1 ${unit}`, dimension) / factor).toBeCloseTo(1, 6);
  });

  test('have the gallon of 231 cubic inches and the exact foot', () => {
    expect(value('1 gal', 'volume')).toBe(3.785411784e-3);
    expect(value('231 gal', 'volume') / 0.0254 ** 3 / 231 ** 2).toBeCloseTo(1, 14);
    expect(value('1 ft', 'length')).toBe(0.3048);
  });

  test('put water’s freezing and boiling point in Fahrenheit where Celsius has them', () => {
    expect(value('32 degF', 'temperature')).toBe(0);
    expect(value('212 degF', 'temperature')).toBe(100);
    expect(value('-40 degF', 'temperature')).toBe(-40);
    expect(value('-5 degC', 'temperature')).toBe(-5);
  });

  test('of metric figures give the very double that the figure in meters is', () => {
    expect(value('78 mm', 'length')).toBe(0.078);
    expect(value('25 mm', 'length')).toBe(0.025);
    expect(value('60 %', 'fraction')).toBe(0.6);
  });
});

describe('a quantity', () => {
  test.each([
    ['3 ft 6 in', 42],
    ['3ft 6in', 42],
    ['2 3/8 in', 2.375],
    ['1-1/2 in', 1.5],
    ['5.25 ft', 63],
    ['-3 ft 6 in', -42],
    ['\u22123 ft 6 in', -42],
    ['3 ft 6 1/2 in', 42.5],
    ['3/4 in', 0.75],
    ['+.5 in', 0.5],
    [`7'6"`, 90],
    [`7' 6 1/2"`, 90.5],
    [`7'-6"`, 90],
    [`-7'6"`, -90],
    [`6''`, 6],
    ['7\u20326\u2033', 90],
    ['7\u2019 6\u201d', 90],
    [`3/8"`, 0.375],
    ['\u22124⅜ in', -4.375],
    ['4 ⅜ in', 4.375],
    ['2 ft 7½ in', 31.5],
    ['4 3\u20448 in', 4.375],
    ['2 feet 1 inch', 25],
    ['3 Inches', 3],
  ])('of length "%s" is read as crews write it', (text, inches) => {
    expect(value(text, 'length')).toBeCloseTo(inches * 0.0254, 14);
  });

  test('of time may go from days down to seconds', () => {
    expect(value('1 h 30 min', 'time')).toBe(5400);
    expect(value('1 d 2 h 3 min 4 s', 'time')).toBe(93784);
    expect(value('1 day', 'time')).toBe(86400);
    expect(value('2 days 3 hours', 'time')).toBe(183600);
  });

  test('may spell the units of a rate as people say them', () => {
    expect(value('1 in/day', 'depthRate')).toBe(value('1 in/d', 'depthRate'));
    expect(value('6 mm/day', 'depthRate')).toBe(value('6 mm/d', 'depthRate'));
    expect(value('3 gal/min', 'flow')).toBe(value('3 gpm', 'flow'));
    expect(value('14 l/min', 'flow')).toBe(value('14 L/min', 'flow'));
  });

  test('tells the units it is written in, as the list spells them', () => {
    expect(parseQuantity(`7' 6 1/2"`, 'length')).toMatchObject({ units: ['ft', 'in'] });
    expect(parseQuantity('6.6 m²', 'area')).toMatchObject({ units: ['m2'] });
  });

  test('may have a figure in its unit', () => {
    expect(value('0.002 1/s', 'rate')).toBe(0.002);
    expect(value('2 m3/h', 'flow')).toBeCloseTo(2 / 3600, 18);
  });

  test.each([
    [
      '3 gal',
      'length',
      'the unit gal in "3 gal" | a length: a number (in m), or a text with one of the units mm, cm, m, in, ft',
    ],
    ['30', 'length', '"30" without a unit | '],
    ['3,5 m', 'length', '"3,5 m", whose comma can be read two ways | '],
    ['6 in 3 ft', 'length', '"6 in 3 ft", whose units do not follow | '],
    ['3 ft -6 in', 'length', '"3 ft -6 in", with "-6 in" left over | '],
    ['1 L 2 L', 'volume', '"1 L 2 L", whose units do not follow | '],
    ['', 'length', '"", an empty text | '],
    ['wide', 'length', '"wide", which begins with no number | '],
    ['1/0 in', 'length', '"1/0 in", which is no number | '],
    ['5 constructor', 'length', 'the unit constructor in "5 constructor" | '],
    ['5 %', 'number', 'the unit % in "5 %" | a number: a figure without unit'],
    ['-4 kg', 'length', 'the unit kg in "-4 kg" | '],
    ['4 3/', 'length', '"4 3/", whose fraction is not finished | '],
    ['4 3/ in', 'length', '"4 3/ in", whose fraction is not finished | '],
    [`6"7'`, 'length', `"6\\"7'", whose units do not follow | `],
    [`7'6`, 'length', `"7'6" without a unit | `],
    ['4⅜', 'length', '"4⅜" without a unit | '],
    ['in/day', 'depthRate', '"in/day", which begins with no number | '],
    ['1 day', 'length', 'the unit d in "1 day" | '],
    ['1 in/year', 'depthRate', 'the unit in/year in "1 in/year" | '],
  ] as const)('"%s" as a %s is refused with its reason', (text, dimension, reason) => {
    expect(complaint(text, dimension).startsWith(reason)).toBe(true);
  });

  test.each([
    ['', 'empty'],
    ['abc', 'no number'],
    ['30', 'no unit'],
    ['-4 kg', 'other unit'],
    ['6 in 3 ft', 'order'],
    ['3,5 m', 'comma'],
    ['4 3/ in', 'half a fraction'],
    ['3 ft -6 in', 'left over'],
    ['1/0 in', 'no value'],
  ] as const)('"%s" has the fault: %s', (text, fault) => {
    expect(parseQuantity(text, 'length')).toMatchObject({ ok: false, fault });
  });

  test('is never an exception, whatever the text', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom(...(Object.keys(DIMENSIONS) as DimensionName[])), (text, dimension) => {
        const parsed = parseQuantity(text, dimension);
        expect(parsed.ok ? Number.isFinite(parsed.value) : parsed.found !== '').toBe(true);
      }),
    );
  });

  test('written with a unit and read again is the same to fourteen figures', () => {
    const units = Object.entries(DIMENSIONS).flatMap(([dimension, { units: names }]) =>
      Object.keys(names).map((name) => [dimension as DimensionName, name] as const),
    );
    const figure = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(figure, fc.constantFrom(...units), (x, [dimension, unit]) => {
        const size = Math.max(
          Math.abs(x),
          Math.abs(toSI(1, DIMENSIONS[dimension].units[unit]!)),
          dimension === 'temperature' ? 100 : 0,
        );
        expect(Math.abs(value(quantityText(x, dimension, unit), dimension) - x)).toBeLessThanOrEqual(1e-14 * size);
      }),
    );
  });
});

describe('figures for people', () => {
  test('of lengths are inches to the eighth, feet from 2 ft up, and millimeters to a meter', () => {
    expect(formatLength(0.0635, 'us')).toBe('2 1/2 in');
    expect(formatLength(42 * 0.0254, 'us')).toBe('3 ft 6 in');
    expect(formatLength(7 * 0.3048, 'us')).toBe('7 ft');
    expect(formatLength(23.95 * 0.0254, 'us')).toBe('2 ft');
    expect(formatLength(0.001, 'us')).toBe('0.04 in');
    expect(formatLength(0.002, 'us')).toBe('0.08 in');
    expect(formatLength(0.0095, 'us')).toBe('3/8 in');
    expect(formatLength(0.0097, 'metric')).toBe('9.7 mm');
    expect(formatLength(0.064, 'metric')).toBe('64 mm');
    expect(formatLength(2.4, 'metric')).toBe('2.40 m');
    expect(formatLength(Number.NaN, 'us')).toBe('none');
  });

  test('of gaps and small heads are tenths of a millimeter or hundredths of an inch, and never nothing', () => {
    expect(formatFine(0.0025, 'metric')).toBe('2.5 mm');
    expect(formatFine(0.005, 'metric')).toBe('5 mm');
    expect(formatFine(0.115, 'metric')).toBe('115 mm');
    expect(formatFine(2e-5, 'metric')).toBe('less than 0.1 mm');
    expect(formatFine(0, 'metric')).toBe('0 mm');
    expect(formatFine(0.005, 'us')).toBe('0.20 in');
    expect(formatFine(1e-4, 'us')).toBe('less than 0.01 in');
    expect(formatFine(0, 'us')).toBe('0 in');
    expect(formatFine(Number.NaN, 'metric')).toBe('none');
  });

  test('of levels have a true minus sign, and none on a zero', () => {
    expect(formatLevel(-0.1238, 'us')).toBe('\u22124 7/8 in');
    expect(formatLevel(-0.1238, 'metric')).toBe('\u2212124 mm');
    expect(formatLevel(-0.0001, 'metric')).toBe('0 mm');
    expect(formatLevel(-0.0001, 'us')).toBe('0 in');
    expect(formatLevel(104.35, 'metric')).toBe('104.350 m');
  });

  test('of flows are gph above 20 gpm and m³/h above 1,000 L/min', () => {
    expect(formatFlow(0.0005678117676, 'us')).toBe('9.0 gpm');
    expect(formatFlow(0.0068, 'us')).toBe('6,470 gph');
    expect(formatFlow(0.0068, 'metric')).toBe('408 L/min');
    expect(formatFlow(0.02, 'metric')).toBe('72.0 m³/h');
    expect(formatFlow(-0.0001, 'metric')).toBe('\u22126.00 L/min');
  });

  test('of a flow beside another take its unit: 1 gpm is 60 gph, 1 L/min 0.06 m³/h', () => {
    const gpm = 0.003785411784 / 60;
    expect(formatFlow(gpm, 'us', 50 * gpm)).toBe('60 gph');
    expect(formatFlow(50 * gpm, 'us', gpm)).toBe('50 gpm');
    expect(formatFlow(0.001 / 60, 'metric', 1)).toBe('0.06 m³/h');
  });

  test('of volumes set thousands apart', () => {
    expect(formatVolume(8.458, 'metric')).toBe('8,458 L');
    expect(formatVolume(0.0051, 'metric')).toBe('5.1 L');
    expect(formatVolume(8.458, 'us')).toBe('2,234 gal');
    expect(formatVolume(120, 'metric')).toBe('120 m³');
    expect(formatVolume(0, 'us')).toBe('0 gal');
    expect(formatNumber(-1234567.89, 1)).toBe('\u22121,234,567.9');
  });

  test('of times have two parts at the most', () => {
    expect(formatDuration(190)).toBe('3 min 10 s');
    expect(formatDuration(86400)).toBe('24 h');
    expect(formatDuration(172800)).toBe('48 h');
    expect(formatDuration(365 * 86400)).toBe('365 d');
    expect(formatDuration(4.25)).toBe('4.3 s');
    expect(formatDuration(59.7)).toBe('1 min');
    expect(formatDuration(3599.8)).toBe('1 h');
    expect(formatDuration(7322)).toBe('2 h 2 min');
    expect(formatDuration(Number.POSITIVE_INFINITY)).toBe('never');
  });

  test('of other things read as the trade says them', () => {
    expect(formatHead(2.4818, 'us')).toBe('8.1 ft');
    expect(formatDepthRate(0.006 / 86400, 'metric')).toBe('6.0 mm/d');
    expect(formatDepthRate(0.006 / 86400, 'us')).toBe('1.65 in/week');
    expect(formatPercent(0.0054)).toBe('0.5 %');
    expect(formatTemperature(15, 'us')).toBe('59 °F');
  });

  test('of lengths under a thousand feet read back to within their last figure', () => {
    fc.assert(
      fc.property(fc.double({ min: -300, max: 300, noNaN: true }), fc.constantFrom('us', 'metric'), (z, display) => {
        const last = display === 'us' ? 0.0254 / 16 : Math.abs(z) < 1 ? 0.0005 : 0.005;
        expect(Math.abs(value(formatLength(z, display), 'length') - z)).toBeLessThanOrEqual(last * 1.000001);
        expect(Math.abs(value(formatLevel(z, display), 'length') - z)).toBeLessThanOrEqual(0.0254 / 16 + 1e-9);
      }),
    );
  });

  test('of times under a day read back to within half their smaller part', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 86400, noNaN: true }), (t) => {
        expect(Math.abs(value(formatDuration(t), 'time') - t)).toBeLessThanOrEqual(t < 3600 ? 0.5 : 30);
      }),
    );
  });
});

describe('the site’s clock', () => {
  test('runs on from its start, names the day when it turns and the year when that does', () => {
    expect(formatClock('2031-06-01T06:00', 6 * 3600 + 190)).toBe('12:03');
    expect(formatClock('2031-06-01T06:00', 86400)).toBe('2 Jun 06:00');
    expect(formatClock('2031-06-01T06:00', 365 * 86400)).toBe('31 May 2032 06:00');
    expect(momentText('2031-06-01T06:00', 190.4)).toBe('2031-06-01T06:03:10');
  });

  test('knows the calendar: leap years by 4, not by 100, but by 400', () => {
    expect(parseMoment('2032-02-29T00:00')).toBeDefined();
    expect(parseMoment('2031-02-29T00:00')).toBeUndefined();
    expect(parseMoment('2100-02-29T00:00')).toBeUndefined();
    expect(parseMoment('2000-02-29T00:00')).toBe(951782400);
    expect([monthLength(2031, 1), monthLength(2032, 1), monthLength(2031, 11)].map((s) => s / 86400)).toEqual([
      28, 29, 31,
    ]);
  });

  test('takes times of day from 00:00 to 23:59', () => {
    expect(parseTimeOfDay('08:30')).toBe(30600);
    expect([parseTimeOfDay('24:00'), parseTimeOfDay('8:30'), parseTimeOfDay('08:60')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});
