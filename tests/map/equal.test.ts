/** The map against what it maps: the running balance by itself, the site's own checks, and the integrator's long run. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { BALANCE_CHECKS, type Figure, type Figures, type MapPoint } from '../../sim/map/answer.ts';
import { figureAt, isContact } from '../../sim/map/between.ts';
import { Seeker, siteAt } from '../../sim/map/seeker.ts';
import { settingFor } from '../../sim/map/share.ts';
import { March } from '../../sim/march.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { pondInBalance, settingsOf, standingVolumes, withoutSupply } from '../../sim/network/start.ts';
import { randomStream } from '../../sim/random.ts';
import type { BalanceAnswer, Check } from '../../sim/results/answer.ts';
import { channelingCheck } from '../../sim/results/checks/channeling.ts';
import { dutyCheck } from '../../sim/results/checks/duty.ts';
import { fallsCheck } from '../../sim/results/checks/falls.ts';
import { headroomCheck } from '../../sim/results/checks/headroom.ts';
import { reachCheck } from '../../sim/results/checks/reach.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { velocityCheck } from '../../sim/results/checks/velocity.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { felted, mapOf, siteOf } from './sites.ts';

const SITES: readonly (readonly [string, Scenario])[] = [
  ['courtyard', siteOf('courtyard')],
  ['courtyard with fine felt', siteOf('courtyard', felted)],
  ['backyard', siteOf('backyard')],
  ['storm', siteOf('storm')],
  [
    'courtyard with its pump at 80 %',
    siteOf('courtyard', ({ pump }) => {
      pump.speed = 0.8;
    }),
  ],
  ['uncleaned, with what has settled', siteOf('uncleaned')],
];
const PLANES = ['valves', 'flow'] as const;
const CASES = SITES.flatMap(([name, site]) => PLANES.map((plane) => [name, plane, site] as const));

type Told = Omit<Figures, 'margin' | 'headroom'>;

function toldBy(answer: BalanceAnswer, over: string | null): Told {
  const { flows, split, channeled, lift, contact } = answer;
  return {
    flow: flows.main,
    split,
    channeled,
    lift,
    emptyBed: contact?.emptyBed ?? null,
    pore: contact?.pore ?? null,
    stone: over === null ? null : flows[over],
  };
}

const settingOf = ({ bottom, top, speed }: MapPoint): { bottom: number; top: number; speed: number } => ({
  bottom: bottom ?? 0,
  top: top ?? 0,
  speed,
});

describe('at its own points a map is the running balance of the site so set, found by itself:', () => {
  test.each(CASES)('%s, plane of %s', { timeout: 60_000 }, (_, plane, site) => {
    const map = mapOf(site, plane);
    const found = map.points.filter((point) => point.found);
    expect(found.length).toBeGreaterThan(300);
    for (const point of found) {
      const told = toldBy(balance(siteAt(site, settingOf(point))), map.over);
      for (const [figure, value] of Object.entries(told) as [keyof Told, number | null][]) {
        const own = point[figure];
        if (value === null || own === null) expect([figure, own]).toEqual([figure, value]);
        // To the rounding in which Newton's method stops: a contact time is endless where the flow is.
        else expect(Math.abs(own - value) / Math.max(1e-6, Math.abs(value)), figure).toBeLessThan(1e-8);
      }
    }
  });
});

describe('at nine places off its points a map tells the balance within the error it states:', () => {
  const random = randomStream('off its points');
  test.each(CASES)('%s, plane of %s', (_, plane, site) => {
    const map = mapOf(site, plane);
    const seeker = new Seeker(site);
    for (let n = 0; n < 9; ) {
      const [x, y] = [map.x[0] + (1 - map.x[0]) * random(), random()];
      const setting =
        plane === 'valves' ? { bottom: x, top: y, speed: site.pump.speed } : settingFor(seeker, y, x, undefined);
      if (setting === undefined || figureAt(map, 'flow', x, y) === null) continue;
      n++;
      const told = toldBy(balance(siteAt(site, setting)), map.over);
      for (const [figure, value] of Object.entries(told) as [Figure, number | null][]) {
        const read = figureAt(map, figure, x, y);
        if (read !== null && value !== null)
          expect(
            Math.abs(read - value) / (isContact(figure) ? value : 1),
            `${figure} at ${x}, ${y}`,
          ).toBeLessThanOrEqual(map.miss[figure]);
      }
    }
  });
});

describe('the check a map names is the first of the site’s own checks to fail:', () => {
  const asked = (site: Scenario): readonly (Check | undefined)[] => {
    const input = { scenario: site, balance: balanceOf(site) };
    return [fallsCheck, channelingCheck, headroomCheck, reachCheck, velocityCheck, dutyCheck].map((ask) => ask(input));
  };

  test.each(CASES)('%s, plane of %s', { timeout: 120_000 }, (_, plane, site) => {
    const { points } = mapOf(site, plane);
    const found = points.filter((point) => point.found);
    const random = randomStream('checks');
    // One of each that the map names, and others at random.
    const named = BALANCE_CHECKS.flatMap((check) => found.find(({ fails }) => fails === check) ?? []);
    const others = Array.from({ length: 12 }, () => found[Math.floor(random() * found.length)]);
    for (const point of [...named, ...others]) {
      const first = asked(siteAt(site, settingOf(point))).find((check) => check?.verdict === 'fail');
      expect([settingOf(point), first?.name ?? null]).toEqual([settingOf(point), point.fails]);
    }
  });

  test('in the felted courtyard channeling and headroom, in the backyard velocity too', () => {
    const named = (site: Scenario) => new Set(mapOf(site, 'valves').points.map(({ fails }) => fails));
    expect(named(SITES[1][1])).toEqual(new Set(['falls', 'channeling', 'headroom', null]));
    expect(named(SITES[2][1])).toEqual(new Set(['falls', 'velocity', null]));
  });
});

describe('at nine settings the integrator comes to rest in what the map tells:', () => {
  const HOURS = 24;
  test.each(SITES.filter(([name]) => name !== 'storm'))('%s', { timeout: 120_000 }, (_, site) => {
    const { speed } = site.pump;
    const map = mapOf(site, 'valves');
    const random = randomStream('long runs');
    for (let n = 0; n < 9; n++) {
      const open = map.points.filter(({ bottom, top }) => bottom !== 0 && top !== 0);
      const point = open[Math.floor(random() * open.length)];
      const set = siteAt(site, settingOf(point));
      const network = assemble(set);
      const level = pondInBalance(set);
      const march = new March(set, network, {
        settings: { ...withoutSupply(settingsOf(set, network, speed)), pondHeld: true },
        volumes: standingVolumes(set, network, level),
        actions: [],
        weather: false,
        cutOut: false,
        pumpSpeed: speed,
      });
      march.to(HOURS * 3600);
      network.rates(march.time, march.volumes, new Float64Array(network.size), new Float64Array(network.quadratures));
      const flow = (name: string): number => network.flow[network.parts.flowNames.indexOf(name)];
      // The integrator's tolerance is a volume, 3e-5 m³: it swings round rest within that, by a few hundredths of a liter a minute.
      const near = (own: number | null, long: number): void =>
        expect(Math.abs((own ?? Number.NaN) - long) / (point.flow ?? 1), JSON.stringify(point)).toBeLessThan(1e-4);
      near(point.flow, flow('main'));
      near((point.split ?? 0) * (point.flow ?? 0), flow('bottom feed'));
      near(point.stone, flow(map.over ?? ''));
      near((point.channeled ?? 0) * (point.split ?? 0) * (point.flow ?? 0), flow('gap'));
    }
  });
});
