/** What the command prints: an object, a summary, a table; in the units asked for. */
import { describe, expect, test } from 'vitest';
import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import { changed, courtyard, tumblebay } from './call.ts';

describe('--json', () => {
  test('of a run prints the whole answer, nothing else, and no figure that JSON cannot hold', () => {
    const { out } = tumblebay(['run', courtyard, '--json']);
    const answer = JSON.parse(out) as RunAnswer;
    expect(out).toBe(`${JSON.stringify(answer, null, 2)}\n`);
    const keys = [
      'title',
      'span',
      'levels',
      'flows',
      'ledger',
      'energy',
      'media',
      'events',
      'checks',
      'assumed',
      'work',
    ];
    for (const key of keys) expect(answer).toHaveProperty(key);
    expect(answer.span).toBe(86400);
    for (const range of [...Object.values(answer.levels), ...Object.values(answer.flows)]) {
      for (const value of [range.start, range.end, range.min.value, range.max.value, range.min.t, range.max.t]) {
        expect(Number.isFinite(value)).toBe(true);
      }
    }
  });

  test('of a balance prints levels, flows, shares, stones and duty, in which what goes in comes out', () => {
    const answer = JSON.parse(tumblebay(['balance', courtyard, '--json']).out) as BalanceAnswer;
    expect(answer.flows['main']).toBeCloseTo(answer.flows['bottom feed'] + answer.flows['top feed'], 9);
    expect(answer.split).toBeCloseTo(answer.flows['bottom feed'] / answer.flows['main'], 12);
    expect(answer.duty.flow).toBe(answer.flows['main']);
    const shares = Object.values(answer.stones).map(({ share }) => share);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  test('gives the same figures whatever they are shown in', () => {
    const figures = (display: string) => {
      const answer = JSON.parse(tumblebay(['run', courtyard, '--json', '--display', display]).out) as RunAnswer;
      return {
        ...answer,
        cautions: [],
        checks: answer.checks.map(({ name, value, verdict }) => ({ name, value, verdict })),
      };
    };
    expect(figures('us')).toEqual(figures('metric'));
  });
});

describe('the summary', () => {
  const lines = (args: string[], input?: string): string[] =>
    tumblebay(['run', ...args], input)
      .out.trimEnd()
      .split('\n');

  test('has its title, checks by verdict and name, water, times and the safety line, within 100 columns', () => {
    const text = lines([courtyard]);
    expect(text[0]).toBe('Courtyard spring · 24 h from 06:00 · metric');
    expect(text.at(-1)).toBe('Local codes and licensed practice come first; a simulation is no survey.');
    expect(text.filter((line) => line.startsWith('water  in 0 L · out '))).toHaveLength(1);
    const times = text.slice(text.findIndex((line) => line.startsWith('times  '))).join(' ');
    for (const event of ['12:00 pump off', 'highest level', '13:00 pump on']) expect(times).toContain(event);
    expect(text.filter((line) => [...line].length > 100)).toEqual([]);
    expect(text.filter((line) => /\s$/.test(line))).toEqual([]);
  });

  test('gives every check of the answer once, by its own verdict, its whole sentence and its mend', () => {
    const file = 'scenarios/courtyard-no-check-valve.json';
    const { checks } = JSON.parse(tumblebay(['run', file, '--json']).out) as RunAnswer;
    const text = lines([file]);
    const leads = text.filter((line) => /^(pass|tight|fail|told) /.test(line));
    expect(leads).toHaveLength(checks.length);
    const flowing = text.join(' ').replace(/\s+/g, ' ');
    checks.forEach(({ verdict, name, says, mend }, i) => {
      expect(leads[i].startsWith(`${verdict.padEnd(7)}${name}  `)).toBe(true);
      for (const words of [says, mend]) expect(flowing).toContain(words.replace(/\s+/g, ' '));
    });
  });

  test('is in US units on request, and names every way the water went', () => {
    const text = lines([courtyard, '--display', 'us']);
    expect(text[0]).toContain('US units');
    expect(text.join('\n')).toMatch(/water {2}in 0 gal · out [\d.]+ gal evaporation · stored [\d,]+ → [\d,]+ gal/);
    const storm = lines(['scenarios/storm.json']).join(' ').replace(/\s+/g, ' ');
    expect(storm).toMatch(/in [\d,]+ gal rain, [\d,]+ gal runoff · out .* overflow pipe · stored/);
  });

  test('counts the events of a long timetable instead of listing them', () => {
    const text = changed('scenarios/low-edge.json', (site) => {
      site.span = '20 d';
      site.watercourse[1].edge.height = '60 mm';
    });
    expect(lines(['-'], text).join(' ')).toMatch(/· +and \d+ more/);
  });
});

test('the balance without --json is a table of levels, flows, stones and speeds', () => {
  const { code, out } = tumblebay(['balance', courtyard]);
  expect(code).toBe(0);
  const rows = [
    /^pump +\d+ L\/min$/m,
    /^ {2}pond +−110 mm$/m,
    /^ {2}main +\d+ L\/min$/m,
    /^broad stone +\d+ % +\d+ mm/m,
  ];
  for (const row of [...rows, /^channeled round the media +[\d.]+ %$/m, /^speed in the main +[\d.]+ m\/s$/m]) {
    expect(out).toMatch(row);
  }
  expect(tumblebay(['balance', courtyard, '--display', 'us']).out).toMatch(/^pump +[\d,]+ gph$/m);
});

test.each(['run', 'balance'])('%s prints no control character of a title or a name to a terminal', (command) => {
  const evil = changed(courtyard, (site) => {
    site.title = 'Spring\u001b[31m\u0007\n(below)';
    site.watercourse[0].stones[0].name = 'broad\u001b[0m stone';
  });
  const { out } = tumblebay([command, '-'], evil);
  expect(out).toMatch(/^Spring \[31m \(below\) · /);
  expect(out).toContain('broad [0m stone');
  expect(out.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
});
