/** Exit codes tell a script how it went: 0 ran, 1 ran and a check fails, 2 the file or the call, 3 no answer. */
import { spawnSync } from 'node:child_process';
import { closeSync, openSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readCall } from '../../sim/node/arguments.ts';
import { changed, courtyard, root, tumblebay } from './call.ts';

/** Two switches a few micrometers apart, one filling and one letting the pond leak: they fire for ever. */
const chattering = changed('scenarios/low-edge.json', (site) => {
  site.pond.leak = { elevation: -0.5, area: 0.002 };
  site.supply = { hose: { flow: '1000 L/min' } };
  site.actions = [
    { when: { basin: 'pond', falls: -0.1 }, do: 'hose', to: 'on' },
    { when: { basin: 'pond', rises: -0.099998 }, do: 'hose', to: 'off' },
  ];
});

describe('a call that runs', () => {
  test('ends with 0 where no check fails', () => {
    const { code, err } = tumblebay(['run', courtyard]);
    expect([code, err]).toEqual([0, '']);
  });

  test('ends with 1 where a check fails, and still prints the whole answer', () => {
    const { code, out, err } = tumblebay(['run', 'scenarios/courtyard-no-check-valve.json', '--json']);
    expect([code, err]).toEqual([1, '']);
    const { checks } = JSON.parse(out) as { checks: { verdict: string }[] };
    expect(checks.map(({ verdict }) => verdict)).toContain('fail');
  });

  test('of balance ends with 0 even where a run fails a check', () => {
    expect(tumblebay(['balance', 'scenarios/courtyard-no-check-valve.json']).code).toBe(0);
  });

  test('of schema prints the schema that is kept beside the reader', () => {
    const { code, out } = tumblebay(['schema']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(JSON.parse(readFileSync(join(root, 'sim/scenario/scenario.schema.json'), 'utf8')));
  });

  test('reads standard input for -', () => {
    const text = readFileSync(join(root, courtyard), 'utf8');
    const piped = tumblebay(['balance', '-', '--json'], text);
    expect(piped).toEqual(tumblebay(['balance', courtyard, '--json']));
    expect(piped.code).toBe(0);
  });
});

describe('a file with problems', () => {
  test('ends with 2, each problem on a line of its own as place, found and wanted', () => {
    const text = changed(courtyard, (site) => {
      site.pump.suction = '3 furlongs';
      site.pond.depht = 1;
      site.watercourse[0].stones[0].crest = [[0, 2]];
      site.actions[0].do = 'pmup';
      delete site.intake;
    });
    for (const command of ['run', 'balance']) {
      const { code, out, err } = tumblebay([command, '-'], text);
      expect([code, out]).toEqual([2, '']);
      const lines = err.trimEnd().split('\n');
      for (const line of lines) expect(line).toMatch(/^.+: found .+, wanted .+$/);
      const places = ['pump.suction', 'pond.depht', 'watercourse[0].stones[0].crest', 'actions[0]', 'intake'];
      for (const place of places) expect(lines.filter((line) => line.startsWith(place))).not.toEqual([]);
      expect(err).toContain('furlongs');
    }
  });

  test('that is no JSON is told by line and column', () => {
    const { code, out, err } = tumblebay(['run', '-'], '{\n  "title": oops\n}');
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^line 2:12: found .*oops.*, wanted .+\n$/);
  });

  test('that is not there, a folder, or no text is told by its name', () => {
    for (const path of ['scenarios/nowhere.json', 'scenarios']) {
      const { code, err } = tumblebay(['run', path]);
      expect(code).toBe(2);
      expect(err).toMatch(new RegExp(`^${path}: found .+, wanted a scenario file\\n$`));
    }
    const { code, err } = tumblebay([
      'run',
      'web/../node_modules/@fontsource/stix-two-text/files/stix-two-text-latin-400-normal.woff2',
    ]);
    expect(code).toBe(2);
    expect(err).toContain('UTF-8');
  });
});

describe('a call with problems', () => {
  const calls: [string[], string[]][] = [
    [[], ['the command: found nothing']],
    [['rnu', courtyard], ['the command: found "rnu"']],
    [['run'], ['the file: found nothing']],
    [['run', ''], ['the file: found nothing']],
    [
      ['run', courtyard, 'another.json'],
      ['the call: found "another.json" left over', 'wanted one file'],
    ],
    [['schema', courtyard], ['wanted no file']],
    [['run', courtyard, '--jsno'], ['--jsno: found an option that is not known, wanted --json']],
    [['run', courtyard, '-j'], ['-j: found an option that is not known']],
    [['run', courtyard, '--json=yes'], ['--json: found "yes", wanted no value']],
    [['run', courtyard, '--json', '--json'], ['--json: found it a second time']],
    [['run', courtyard, '--display', 'imperial'], ['--display: found "imperial", wanted us or metric']],
    [['run', courtyard, '--csv', '--json'], ['--csv: found --json, wanted the file to write']],
    [['run', courtyard, '--csv'], ['--csv: found nothing, wanted the file to write']],
    [['run', courtyard, '--every', '1min'], ['--every: found it without --csv']],
    [['run', courtyard, '--csv', 'x.csv', '--every', '1 gal'], ['--every: found the unit gal']],
    [
      ['run', courtyard, '--csv', 'x.csv', '--every', '60'],
      ['--every: found "60" without a unit, wanted a time with its unit'],
    ],
    [['run', courtyard, '--csv', 'x.csv', '--every', '0s'], ['--every: found 0s, wanted a time above 0']],
    [['balance', courtyard, '--csv', 'x.csv'], ['--csv: found it with balance']],
    [
      ['run', '--display', 'q', '--what'],
      ['the file: found nothing', '--what: found', '--display: found "q"'],
    ],
  ];

  test.each(calls)('%j is refused, with what was found and what is wanted', (args, told) => {
    const reading = readCall(args);
    const problems = reading.kind === 'refused' ? reading.problems : [];
    const lines = problems.map(({ place, found, wanted }) => `${place}: found ${found}, wanted ${wanted}`).join('\n');
    for (const words of told) expect(lines).toContain(words);
  });

  const refused: [string[], number][] = [
    [['run', '--display', 'q', '--what'], 3],
    [['run', courtyard, '--csv', 'no/such/folder/x.csv'], 1],
    [['run', courtyard, '--csv', 'x.csv', '--every', '1e-6 s'], 1],
    [['run', courtyard, '--csv', `./${courtyard}`], 1],
    [['run', '/dev/zero'], 1],
  ];

  test.each(refused)('%j ends with 2, one problem a line and nothing on standard output', (args, count) => {
    const { code, out, err } = tumblebay(args);
    expect([code, out]).toEqual([2, '']);
    const lines = err.trimEnd().split('\n');
    expect(lines).toHaveLength(count);
    for (const line of lines) expect(line).toMatch(/^.+: found .+, wanted .+$/);
  });

  test('gets help where it asks for it', () => {
    const { code, out, err } = tumblebay(['run', '--help']);
    expect([code, err]).toEqual([0, '']);
    for (const word of ['run FILE', 'balance FILE', 'schema', '--json', '--csv', '--every', '--display']) {
      expect(out).toContain(word);
    }
  });
});

test('a run that is capped ends with 3 and tells when and where', () => {
  const { code, out, err } = tumblebay(['run', '-', '--json'], chattering);
  expect([code, out]).toEqual([3, '']);
  expect(err).toMatch(/^capped after 1 min \d+ s \(06:01\), actions\[\d\]: .*fires over and over.*\n$/);
});

test('an answer that standard output has no room for ends with 2, and says so in one line', () => {
  const full = openSync('/dev/full', 'w');
  const { status, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'sim/node/main.ts', 'schema'], {
    cwd: root,
    stdio: ['ignore', full, 'pipe'],
    encoding: 'utf8',
  });
  closeSync(full);
  expect(status).toBe(2);
  expect(stderr).toBe('standard output: found a full disk, wanted room for the answer\n');
});
