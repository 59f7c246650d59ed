import { describe, expect, test } from 'vitest';
import type { Check } from '../../sim/results/answer.ts';
import { drainBackChecks } from '../../sim/results/checks/drainBack.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { keptSite, overflowBlocked, stopPump, stopWithValveFailed } from '../../sim/trials/stop.ts';
import { plainFile, siteOf, terrace } from '../trials/plainSite.ts';

/** The plain site with a kind of check valve and a mark; without a valve some 0.7 m³ more come back than with one. */
const withValve = (checkValve: boolean | 'unknown' | { leak: number }, fillMark: number): Scenario => {
  const file = plainFile();
  file.plumbing.main.checkValve = checkValve;
  file.pond.fillMark = fillMark;
  return siteOf(file);
};

const named = (s: Scenario, name: string): Check => {
  const check = drainBackChecks(s, undefined).find((c) => c.name === name);
  if (check === undefined) throw new Error(`no ${name}`);
  return check;
};
const failed = (s: Scenario): Check => named(s, 'drain-back, valve failed');

describe('drain-back, valve failed', () => {
  test('with a sound valve is told, whether it floods or not', () => {
    const floods = failed(withValve(true, -0.06));
    expect(floods).toMatchObject({ verdict: 'told', limit: null, margin: null });
    expect(floods.value).toBeLessThan(0);
    expect(floods.says).toMatch(
      /^It floods if the check valve fails\. When the pump stops with the check valve failed, the pond rises/,
    );
    expect(floods.mend).toMatch(/^Lower the mark/);
    const holds = failed(withValve(true, -0.2));
    expect(holds).toMatchObject({ verdict: 'told', mend: '' });
    expect(holds.says).not.toContain('floods');
  });

  test.each([[false], ['unknown'], [{ leak: 1e-6 }]] as const)('with %j it fails where the edge is passed', (valve) => {
    expect(failed(withValve(valve, -0.06))).toMatchObject({ verdict: 'fail', limit: 0, origin: 'our default' });
    expect(failed(withValve(valve, -0.2))).toMatchObject({ verdict: 'pass', mend: '' });
  });

  test('is tight where the edge is held by less than the band', () => {
    const s = withValve(false, -0.2);
    const near = withValve(false, -0.2 + (failed(s).value ?? 0) - 0.002);
    expect(failed(near).value).toBeLessThan(failed(near).band);
    expect(failed(near).verdict).toBe('tight');
  });

  test('an unknown valve counts as sound in drain-back itself, a missing or leaking one does not', () => {
    const room = (valve: Parameters<typeof withValve>[0]): number =>
      named(withValve(valve, -0.2), 'drain-back').value ?? 0;
    expect(room('unknown')).toBe(room(true));
    expect(room(false)).toBeLessThan(room(true) - 0.05);
    expect(room({ leak: 2e-6 })).toBeLessThan(room(true) - 0.001);
    expect(named(withValve({ leak: 2e-6 }, -0.2), 'drain-back').says).toContain('counts as a failed one');
  });

  test('says which way the water came', () => {
    const { says } = failed(withValve(false, -0.2));
    expect(says).toMatch(
      /[\d,]+ L come back: \d+ L through the main line \(\d+ L of it out of the filter\) and \d+ L over the stones\./,
    );
  });

  test('names the pool where there is no filter to run empty', () => {
    const file = plainFile();
    file.plumbing.main.checkValve = false;
    file.plumbing.bottomFeed.inlet = 0.35;
    file.filter = undefined;
    const { says } = failed(siteOf(file));
    expect(says).toMatch(/\d+ L through the main line \([\d,]+ L of it out of ‘pool’\)/);
    expect(says).not.toContain('the filter');
  });

  test('its mends hold whether the top valve is as it is set or shut', () => {
    // Set open, the top feed lets the filter run back faster, though less of it: the worse at a high mark, not at a low.
    const site = (fillMark: number): Scenario => {
      const file = plainFile();
      file.pond.fillMark = fillMark;
      file.plumbing.tee = 0.4;
      file.plumbing.main.checkValve = false;
      file.plumbing.topFeed = { diameter: 0.04, length: 2, roughness: 1e-5, k: 1, valve: 0.5, outlet: 1.05 };
      return siteOf(file);
    };
    const high = failed(site(-0.02));
    expect(high.says).not.toContain('the top valve shut');
    const by = Number(/Lower the mark (\d+) mm/.exec(high.mend)?.[1]) / 1000;
    const low = failed(site(-0.02 - by));
    expect(low.says).toContain('the top valve shut');
    expect(low.value).toBeGreaterThanOrEqual(high.band);
  });

  test('names the top valve where shut is the worse', () => {
    const kept = keptSite(terrace());
    if (kept === undefined) throw new Error('the worked site has a mark');
    const check = failed(terrace());
    expect(check.says).toContain('and the top valve shut at that moment');
    expect(check.value).toBeCloseTo(stopWithValveFailed(kept).trial.below, 9);
  });
});

describe('the first sentences of drain-back', () => {
  const says = (valve: Parameters<typeof withValve>[0], mark: number): string =>
    named(withValve(valve, mark), 'drain-back').says;

  test('say how it goes with the check valve sound, and failed', () => {
    const both =
      /^When the pump stops with the check valve sound, the pond rises \d+ mm, nine tenths of it in [\dmins ]+, highest after [\dhmins ]+, and stays \d+ mm below its edge \([^)]+\)\. With the check valve failed it rises (\d+) mm and stays (\d+) mm below its edge\./;
    const [, rise, room] = both.exec(says(true, -0.2)) ?? [];
    const { value } = failed(withValve(true, -0.2));
    expect(Number(room)).toBeCloseTo(1000 * (value ?? 0), 0);
    expect(Number(rise)).toBeCloseTo(200 - 1000 * (value ?? 0), -0.5);
    expect(says(true, -0.06)).toMatch(/With the check valve failed it rises \d+ mm and runs over, [\d,]+ L being lost/);
  });

  test('say of an unknown valve how it goes with one that holds, and one that fails', () => {
    expect(says('unknown', -0.2)).toMatch(
      /^When the pump stops with a check valve that holds, .*\. With the check valve failed it/,
    );
  });

  test('speak of one stop only where no valve holds', () => {
    for (const valve of [false, { leak: 1e-6 }]) {
      expect(says(valve, -0.2)).toMatch(/^When the pump stops, the pond rises/);
      expect(says(valve, -0.2)).not.toContain('With');
    }
  });
});

describe('drain-back in rain', () => {
  test('is told, with 25 mm on what is open to the sky and the overflow blocked', () => {
    const kept = keptSite(terrace());
    if (kept === undefined) throw new Error('the worked site has a mark');
    const check = named(terrace(), 'drain-back in rain');
    expect(check).toMatchObject({ verdict: 'told', limit: null, unit: 'm' });
    expect(check.value).toBeCloseTo(stopPump(overflowBlocked(kept), { rain: 0.025 }).below, 9);
    expect(check.says).toContain('1 in of rain in the hour after the stop and the overflow pipe blocked');
  });
});
