/**
 * Every demo site does what its notes say. The claims are held as figures of the run, and where a note says 'without
 * this', against the same site without it; nothing is compared with a former answer of ours.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test, vi } from 'vitest';
import { readScenario, type Scenario, seriesOf, simulate } from '../sim/index.ts';
import { withValue } from '../sim/results/checks/withValue.ts';
import { stopTrial } from '../sim/trials/stop.ts';

// Each test runs whole sites with all their trials.
vi.setConfig({ testTimeout: 60_000 });

const folder = fileURLToPath(new URL('../scenarios', import.meta.url));
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace(/\.json$/, ''));

function site(name: string): Scenario {
  const reading = readScenario(readFileSync(`${folder}/${name}.json`, 'utf8'));
  if (!reading.ok) throw new Error(`${name}: ${JSON.stringify(reading.problems)}`);
  return reading.scenario;
}

const answerOf = (scenario: Scenario) => simulate(scenario).answer;
const lowestRim = ({ pond }: Scenario): number => Math.min(...pond.rim.crest.map(([, z]) => z));
const check = (answer: ReturnType<typeof answerOf>, name: string) => answer.checks.find((each) => each.name === name)!;

/** What a stop adds in a run: the highest level over the level right at the moment of the stop, m. */
function riseAfter(scenario: Scenario, stop: number): number {
  const { t, levels } = seriesOf(simulate(scenario).record, 1);
  return Math.max(...levels['pond'].subarray(stop, stop + 3600)) - levels['pond'][t.indexOf(stop)];
}

describe('the demo sites', () => {
  test.each(names)('%s runs, closes its account, and says in its notes what it shows', (name) => {
    const scenario = site(name);
    const { ledger, checks } = answerOf(scenario);
    expect(ledger.closure).toBeLessThan(1e-9);
    expect(ledger.pumped).toBeGreaterThan(1);
    expect(checks.length).toBeGreaterThan(5);
    expect(scenario.notes).toMatch(/[Ii]t (is meant to )?show|question/);
  });

  test('have titles of their own, in metric and in US units', () => {
    const sites = names.map(site);
    expect(new Set(sites.map(({ title }) => title)).size).toBe(names.length);
    expect(new Set(sites.map(({ display }) => display))).toEqual(new Set(['metric', 'us']));
  });

  test('share no main measurement, but for the courtyard and its twin', () => {
    const others = names.filter((name) => name !== 'courtyard-no-check-valve').map(site);
    const measures = others.map(({ pump, pond, intake }) => [
      JSON.stringify(pump.curve),
      pond.profile.at(-1)![1],
      intake.width,
    ]);
    for (const i of [0, 1, 2]) expect(new Set(measures.map((row) => row[i])).size).toBe(others.length);
  });
});

describe('the courtyard', () => {
  test('rises by a height that can be seen, and holds by more than its band', () => {
    const scenario = site('courtyard');
    const answer = answerOf(scenario);
    const { verdict, value, band } = check(answer, 'drain-back');
    expect(riseAfter(scenario, 6 * 3600)).toBeGreaterThan(0.02);
    expect(value! - band).toBeGreaterThan(0.05);
    expect(verdict).toBe('pass');
    expect(lowestRim(scenario) - answer.levels['pond'].max.value).toBeGreaterThan(0.05);
    expect(answer.checks.filter((each) => each.verdict === 'fail')).toEqual([]);
  });

  test('goes over its edge without its check valve, and differs in that alone', () => {
    const twin = site('courtyard-no-check-valve');
    const answer = answerOf(twin);
    expect(answer.levels['pond'].max.value).toBeGreaterThan(lowestRim(twin));
    expect(answer.ledger.out.rim).toBeGreaterThan(0.05);
    const atRim = answer.events.find(({ what }) => what === 'pond at rim')!;
    expect(atRim.t - 6 * 3600).toBeLessThan(15 * 60);
    expect(check(answer, 'drain-back').verdict).toBe('fail');

    const { title, notes, plumbing, ...rest } = site('courtyard');
    const { title: twinTitle, notes: twinNotes, plumbing: twinPlumbing, ...twinRest } = twin;
    expect(twinRest).toEqual(rest);
    expect(twinPlumbing).toEqual({ ...plumbing, main: { ...plumbing.main, checkValve: { kind: 'none' } } });
    expect([twinTitle === title, twinNotes === notes]).toEqual([false, false]);
  });
});

test('the backyard holds at either end of every assumed number, with a sound check valve', () => {
  const scenario = site('backyard');
  const { checks } = answerOf(scenario);
  const drainBack = checks.find(({ name }) => name === 'drain-back')!;
  expect(drainBack.value! - drainBack.band).toBeGreaterThan(drainBack.limit!);
  const sketched = scenario.assumed.filter(({ place, band }) => place.startsWith('sketch.') && band);
  expect(sketched.length).toBeGreaterThan(10);
  for (const { place, band } of sketched) {
    for (const end of band!) expect(stopTrial(withValue(scenario, place, end)!)!.below, place).toBeGreaterThan(0.025);
  }
  for (const name of ['volume', 'duty', 'falls', 'loss'])
    expect(checks.find((each) => each.name === name)!.says).toContain('which is assumed');
});

test('the first start starves the vault, and the hose lets the falls run', () => {
  const scenario = site('first-start');
  const answer = answerOf(scenario);
  const hoseOn = answer.events.find(({ what }) => what === 'hose on')!.t;
  expect(answer.levels['vault'].min.value).toBeLessThan(scenario.pump.minimum);
  expect(answer.levels['vault'].min.t).toBeLessThanOrEqual(hoseOn + 1);
  expect(answer.levels['pond'].min.value).toBeLessThan(scenario.intake.elevation + 0.005);
  expect(answer.levels['vault'].end).toBeGreaterThan(scenario.pump.minimum + 0.3);
  expect(answer.flows['lower step'].end).toBeGreaterThan(0.002);
  expect(check(answer, 'first start').verdict).toBe('fail');
});

test('a dammed stream empties the pond to its intake within the hour, over one edge alone', () => {
  const scenario = site('dammed-stream');
  const { levels, ledger, events } = answerOf(scenario);
  const dammed = events.find(({ what }) => what.startsWith('leaf run blockage'))!.t;
  const starved = events.find(({ what }) => what === 'vault at minimum')!.t;
  expect(starved - dammed).toBeLessThan(3600);
  expect(levels['pond'].end).toBeLessThan(scenario.intake.elevation + 0.01);
  const { edges, evaporation, ...otherWays } = ledger.out;
  expect(edges).toBeGreaterThan(0.4 * ledger.stored.start);
  expect(Math.max(...Object.values(otherWays))).toBe(0);
  expect(evaporation).toBeLessThan(0.01 * edges);
});

test('a basin of gravel rises two and a half times as far as open water would', () => {
  const scenario = site('gravel-basin');
  const inGravel = riseAfter(scenario, 6 * 3600);
  const open = riseAfter({ ...scenario, pond: { ...scenario.pond, displaced: [] } }, 6 * 3600);
  expect(inGravel).toBeGreaterThan(0.05);
  // The vault rises with the basin and is open in both, so that the ratio stays a little under 1/0.4.
  expect(inGravel / open).toBeGreaterThan(2.1);
  expect(inGravel / open).toBeLessThan(2.5);
});

test('a low edge loses water by day alone', () => {
  const scenario = site('low-edge');
  const { t, levels, flows } = seriesOf(simulate(scenario).record, 3600);
  const at = (hour: number): number => levels['pond'][t.indexOf(hour * 3600)];
  // The run starts at six: the pump runs from hour 2 to 14; a night's hours from 16 on, when all has come home.
  const day = at(26 + 1) - at(26 + 11);
  const night = at(16) - at(24);
  expect(day).toBeGreaterThan(0.04);
  expect(night).toBeLessThan(0.005);
  const overEdge = flows['grass run edge'];
  t.forEach((moment, row) => {
    const hour = (moment / 3600 + 6) % 24;
    if (hour > 8 && hour < 20) expect(overEdge[row]).toBeGreaterThan(0);
    if (hour > 20 || hour < 8) expect(overEdge[row]).toBe(0);
  });
});

test('the overflow keeps the edge dry in the storm, which goes over it without the pipe', () => {
  const scenario = site('storm');
  const answer = answerOf(scenario);
  expect(answer.ledger.out.rim).toBe(0);
  expect(answer.ledger.out.overflow).toBeGreaterThan(1);
  expect(answer.events.map(({ what }) => what)).toContain('power off');
  const without = answerOf({ ...scenario, pond: { ...scenario.pond, overflow: undefined } });
  expect(without.ledger.out.rim).toBeGreaterThan(0.1);
  expect(without.levels['pond'].max.value).toBeGreaterThan(lowestRim(scenario));
});
