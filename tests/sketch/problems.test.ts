import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import { least, problemsOf } from './sites.ts';

const told = (numbers: object, beside: object = {}) => problemsOf({ ...beside, sketch: { ...least(), ...numbers } });

describe('a number that makes no sense', () => {
  test.each<[string, object, string, RegExp, RegExp]>([
    ['a depth of nothing', { depth: 0 }, 'sketch.depth', /^0$/, /the nearest that makes sense is 254 mm/],
    [
      'a depth below nothing',
      { depth: '-2 ft' },
      'sketch.depth',
      /-2 ft/,
      /from 10 in to 12 ft; the nearest .* is 10 in/,
    ],
    ['a pond 400 m deep', { depth: '400 m' }, 'sketch.depth', /400 m/, /the nearest that makes sense is 3\.66 m/],
    ['a volume for a length', { length: '500 gal' }, 'sketch.length', /unit gal/, /the pond’s length, a length/],
    ['half a fraction', { lip: '3 1/' }, 'sketch.lip', /not finished/, /the height of the filter’s lip/],
    ['no unit', { lip: '30' }, 'sketch.lip', /without a unit/, /in, ft/],
    ['no text', { width: null }, 'sketch.width', /null/, /a length/],
    ['a word that is none', { climate: 'wet' }, 'sketch.climate', /wet/, /"cool" or "warm" or "hot dry"/],
    ['a size that is none', { pipe: { size: '9 in' } }, 'sketch.pipe.size', /9 in/, /nominal size/],
    ['an unknown key', { dept: 2 }, 'sketch.dept', /not known/, /"depth", perhaps/],
    ['an unknown key of the pipe', { pipe: { elbow: 2 } }, 'sketch.pipe.elbow', /not known/, /"elbows", perhaps/],
    ['a bucket that never fills', { bucket: ['5 gal', 0] }, 'sketch.bucket[1]', /^0$/, /a time/],
    [
      'a bucket that fills at once',
      { bucket: ['5 gal', '1 s'] },
      'sketch.bucket',
      /18,000 gph/,
      /nearest .* is 6,000 gph/,
    ],
    [
      'a pump that does not lift',
      { pump: { flow: '3000 gph', head: '2.5 ft' } },
      'sketch.pump.head',
      /2 ft 6 in/,
      /more than the 2 ft 10 in/,
    ],
    [
      'a curve that does not lift',
      {
        pump: [
          [0, 0.6],
          [0.002, 0.3],
        ],
      },
      'sketch.pump',
      /a head of/,
      /more than/,
    ],
    ['a pump of nothing', { pump: { flow: '10 gph', head: '9 ft' } }, 'sketch.pump.flow', /gpm/, /nearest/],
    ['a pump that is a word', { pump: 'big' }, 'sketch.pump', /big/, /flow/],
    [
      'a pond within its vault',
      { length: '3 ft', width: '2 ft' },
      'sketch.length',
      /a pond of 4\.92 ft²/,
      /larger than its vault/,
    ],
    [
      'a shelf that leaves no floor',
      { shelf: { depth: '1 ft', width: '6 ft' } },
      'sketch.shelf',
      /12 ft/,
      /a floor is left/,
    ],
    [
      'a shelf under the floor',
      { shelf: { depth: '4 ft', width: '1 ft' } },
      'sketch.shelf',
      /4 ft/,
      /the pond’s depth/,
    ],
    [
      'a stream too long for its fall',
      { stream: '60 ft' },
      'sketch.stream',
      /top of the stream/,
      /a stream of at most 52 ft/,
    ],
    [
      'an edge as high as the lip',
      { edge: '1 ft', lip: '14 in' },
      'sketch.lip',
      /2 in between/,
      /a lip at least 20 in above/,
    ],
    [
      'a side stone over the pool’s edge',
      { sideStone: '2 in', poolEdge: '1 in' },
      'sketch.poolEdge',
      /stones/,
      /below/,
    ],
  ])('is told by its place, with what is wanted: %s', (_what, numbers, place, found, wanted) => {
    const problems = told(numbers);
    expect(problems.map((each) => each.place)).toEqual([place]);
    expect(problems[0].found).toMatch(found);
    expect(problems[0].wanted).toMatch(wanted);
  });

  test('does not hide what is wrong beside the sketch, nor the other numbers', () => {
    const problems = told(
      { depth: 0, lip: '1 mm' },
      { pond: { fillMrak: 0 }, watercourse: [{ name: 'x' }], span: '3 ft' },
    );
    expect(problems.map(({ place }) => place).sort()).toEqual(
      ['pond.fillMrak', 'sketch.depth', 'sketch.lip', 'span', 'watercourse[0].kind'].sort(),
    );
  });

  test('is all that is told of a sketch that is none', () => {
    for (const sketch of [0, null, 'pond', []]) expect(problemsOf({ sketch })[0].place).toBe('sketch');
    expect(problemsOf({ sketch: {} }).map(({ place }) => place)).toEqual(
      ['length', 'width', 'depth', 'pump'].map((key) => `sketch.${key}`),
    );
  });
});

test('a part beside the sketch that contradicts it is told where it stands or by the number to mend', () => {
  const high = told(
    {},
    {
      filter: {
        lip: {
          crest: [
            [0, 3],
            [1, 3],
          ],
        },
        rim: {
          crest: [
            [0, 1],
            [2, 1],
          ],
        },
      },
    },
  );
  expect(high.map(({ place }) => place)).toContain('filter.lip.crest');
  const mark = told(
    {},
    {
      pond: {
        fillMark: 0.5,
        rim: {
          crest: [
            [0, 0.1],
            [1, 0.1],
          ],
        },
      },
    },
  );
  expect(mark.map(({ place }) => place)).toContain('pond.fillMark');
});

test('a reading is had of any sketch and of anything beside it', () => {
  const keys = ['length', 'width', 'depth', 'pump', 'pipe', 'lip', 'stream', 'bucket', 'shelf', 'rock', 'feeds'];
  const parts = ['pond', 'pump', 'plumbing', 'filter', 'watercourse', 'supply', 'span', 'intake'];
  const anything = fc.oneof(fc.anything(), fc.constantFrom('3 ft', '1 in', 0, -1, '1e400 m', [], {}));
  const over = fc.record({
    sketch: fc.dictionary(fc.constantFrom(...keys), anything),
    beside: fc.dictionary(fc.constantFrom(...parts), anything),
  });
  fc.assert(
    fc.property(over, ({ sketch, beside }) => {
      const reading = readSite({ ...beside, sketch: { ...least(), ...sketch } });
      if (!reading.ok) expect(reading.problems.length).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});
