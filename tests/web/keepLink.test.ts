import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namedBy } from '../../web/keep/address.ts';
import { type Carried, follow, linkOf } from '../../web/keep/link.ts';
import { siteNames, siteText } from './sites.ts';

const subject = fc.constantFrom('stop', 'filling', 'filter') as fc.Arbitrary<Carried['about']>;
const display = fc.constantFrom('metric', 'us') as fc.Arbitrary<'metric' | 'us'>;
const file = fc.dictionary(fc.string(), fc.jsonValue());
const carried: fc.Arbitrary<Carried> = fc.record(
  { file, about: subject, display },
  { requiredKeys: ['file', 'about'] },
);

/** As JSON carries it: without the sign of a zero. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a link', () => {
  test('carries any case there and back, deflated or not', async () => {
    await fc.assert(
      fc.asyncProperty(carried, fc.boolean(), async (given, deflated) => {
        const link = await (deflated ? linkOf(given) : linkOf(given, null));
        expect(link).toMatch(deflated ? /^#s=1\.d\.[0-9a-z]+\.[\w-]+$/ : /^#s=1\.u\.[0-9a-z]+\.[\w-]+$/);
        expect(namedBy(link).kind).toBe('link');
        expect(plain(await follow(link))).toEqual(plain({ kind: 'case', carried: given }));
      }),
    );
  });

  test.each(siteNames)(
    'of the demo site %s is shorter than the 2,000 characters that every program lets pass',
    async (name) => {
      const link = await linkOf({ file: JSON.parse(siteText(name)), about: 'stop' });
      expect(link.length).toBeLessThan(2000);
    },
  );

  test('cut short anywhere is told as cut', async () => {
    const link = await linkOf({ file: JSON.parse(siteText('courtyard')), about: 'filter', display: 'us' });
    for (let end = 3; end < link.length; end++)
      expect(await follow(link.slice(0, end)), `${end}`).toEqual({ kind: 'cut' });
  });

  test('of which one character was changed never brings another case', async () => {
    const given: Carried = { file: { title: 'Mine', pond: { fillMark: '-110 mm' } }, about: 'stop' };
    const link = await linkOf(given);
    const start = '#s=1.'.length;
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: start, max: link.length - 1 }),
        fc.constantFrom(...'abcXYZ019-_.'),
        async (at, letter) => {
          fc.pre(link[at] !== letter);
          expect(await follow(link.slice(0, at) + letter + link.slice(at + 1))).toEqual({ kind: 'cut' });
        },
      ),
      { numRuns: 300 },
    );
  });

  test('of a later version is told as newer', async () => {
    const link = await linkOf({ file: {}, about: 'stop' });
    expect(await follow(link.replace('#s=1.', '#s=2.'))).toEqual({ kind: 'newer' });
    expect(await follow('#s=17.zz')).toEqual({ kind: 'newer' });
  });

  test.each(['#s=', '#s=1', '#s=x.d.0.0', '#s=1.d.45h.', '#s=0.u.1.e30', '#s=1.u.%.%'])(
    '%s is told as cut',
    async (hash) => {
      expect(await follow(hash)).toEqual({ kind: 'cut' });
    },
  );

  test('that would unfold to more than a site ever holds is refused', async () => {
    const link = await linkOf({ file: { notes: 'a'.repeat(3_000_000) }, about: 'stop' });
    expect(link.length).toBeLessThan(10_000);
    expect(await follow(link)).toEqual({ kind: 'cut' });
  });
});
