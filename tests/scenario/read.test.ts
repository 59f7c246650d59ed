import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readScenario, readSite } from '../../sim/scenario/read.ts';
import { fullSite } from './full-site.ts';

const kept = (name: string) => readFileSync(new URL(`../results/${name}`, import.meta.url), 'utf8');

/** Every place in a value where another could stand. */
const placesIn = (value: unknown): (readonly (string | number)[])[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => [[key], ...placesIn(inner).map((path) => [key, ...path])])
    : [];

function put(root: unknown, path: readonly (string | number)[], value: unknown): void {
  const holder = path.slice(0, -1).reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], root);
  if (value === undefined) delete (holder as Record<string, unknown>)[path.at(-1)!];
  else (holder as Record<string, unknown>)[path.at(-1)!] = value;
}

describe('reading a file', () => {
  test.each(['terrace-48h.json', 'terrace-365d.json'])(
    'takes the worked site %s, which leaves nothing open',
    (name) => {
      const reading = readScenario(kept(name));
      expect(reading.ok && reading.scenario.assumed).toEqual([]);
      expect(reading.ok && reading.scenario.title).toMatch(/^Terrace spring/);
    },
  );

  test('gives the line and column of what is no JSON', () => {
    expect(readScenario('{\n  "span": 48 h\n}')).toEqual({
      ok: false,
      problems: [{ place: 'line 2:14', found: 'h', wanted: 'a comma or }' }],
    });
  });

  test('says what a file must be where it is something else', () => {
    for (const text of ['[]', '1', '"a pond"', 'null']) {
      const reading = readScenario(text);
      expect(reading.ok ? [] : reading.problems.map(({ place }) => place)).toEqual(['the file']);
    }
  });

  test('asks an empty object for each part that every site has', () => {
    const reading = readScenario('{}');
    const places = reading.ok ? [] : reading.problems.map(({ place }) => place);
    expect(places).toEqual(['span', 'pond', 'intake', 'vault', 'pump', 'plumbing']);
  });

  test('does not change what it reads', () => {
    const site = fullSite();
    readSite(site);
    expect(site).toEqual(fullSite());
  });

  test('gives a reading of any text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const reading = readScenario(text);
        expect(reading.ok || reading.problems.length > 0).toBe(true);
      }),
    );
  });

  test('gives a reading of any site with anything anywhere in it, and whole figures where it is taken', () => {
    const paths = placesIn(fullSite());
    const stuff = fc.oneof(
      fc.constantFrom<unknown>(
        undefined,
        null,
        0,
        -1,
        1e-9,
        1e9,
        '',
        '3 gal',
        '1 in',
        'pond',
        'empty',
        'run',
        [],
        {},
        true,
      ),
      fc.double(),
      fc.jsonValue({ maxDepth: 2 }),
    );
    const changes = fc.array(fc.tuple(fc.constantFrom(...paths), stuff), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(changes, (each) => {
        const site = fullSite();
        for (const [path, value] of each) {
          try {
            // A copy, for the same list put in twice could come to hold itself, as no file can.
            put(site, path, structuredClone(value));
          } catch {
            // The change before may have taken away the part in which this one would stand.
          }
        }
        const reading = readSite(site);
        if (!reading.ok) expect(reading.problems.length).toBeGreaterThan(0);
        else expect(JSON.stringify(reading.scenario)).not.toMatch(/null|NaN|Infinity/);
      }),
      { numRuns: 3000 },
    );
  });
});
