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
    expect(floods.says).toMatch(/^It floods if the check valve fails\. With the check valve failed the pond rises/);
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

  test('names the top valve where shut is the worse', () => {
    const kept = keptSite(terrace());
    if (kept === undefined) throw new Error('the worked site has a mark');
    const check = failed(terrace());
    expect(check.says).toContain('and the top valve shut at that moment');
    expect(check.value).toBeCloseTo(stopWithValveFailed(kept).trial.below, 9);
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
