/** The site whose media have caught muck does what its notes say: at its valves, over its map, and as more settles. */
import { describe, expect, test } from 'vitest';
import { balance } from '../sim/balance.ts';
import { care } from '../sim/clogging/care.ts';
import type { OperatingMap } from '../sim/map/answer.ts';
import { siteAt } from '../sim/map/seeker.ts';
import { channelingCheck } from '../sim/results/checks/channeling.ts';
import { balanceOf } from '../sim/results/checks/variants.ts';
import type { Scenario } from '../sim/scenario/scenario.ts';
import { simulate } from '../sim/simulate.ts';
import { mapOf, siteOf } from './map/sites.ts';

const site = siteOf('uncleaned');
const { valve } = site.plumbing.bottomFeed!;
const top = site.plumbing.topFeed!.valve;
const { speed } = site.pump;

const setTo = (bottom: number, s: Scenario = site): Scenario => siteAt(s, { bottom, top, speed });

/** The same filter when its media hold so many times as much as they do; none: rinsed. */
const holding = (times: number): Scenario =>
  siteOf('uncleaned', ({ filter }) => {
    for (const [i, layer] of filter.media.layers.entries())
      layer.deposit = times * site.filter!.media!.layers[i]!.deposit;
  });

test('as it stands no check fails', () => {
  const { checks } = simulate(site).answer;
  expect(checks.length).toBeGreaterThan(10);
  expect(checks.filter(({ verdict }) => verdict === 'fail')).toEqual([]);
  expect(balance(site).lift).toBeLessThan(1);
  expect(site.filter!.media!.layers.every(({ deposit }) => deposit > 0)).toBe(true);
});

describe('what its media hold', () => {
  const WEEK = 604800;
  const { debris, filter } = site;
  const { layers } = filter!.media!;

  test('is what nine weeks of its debris bring, by the course of its clogging', () => {
    const told = care(site);
    if (!told.care) throw new Error(told.says);
    expect(Math.abs(told.since! / WEEK - 9)).toBeLessThan(0.5);
  });

  test('and by first-order capture of what goes through clean media and these (Iwasaki 1937)', () => {
    const through = (balance(site).flows.media! + balance(holding(0)).flows.media!) / 2;
    let left = 9 * WEEK * through * debris;
    for (const { capture, thickness, deposit } of layers) {
      const kept = left * (1 - Math.exp(-capture * thickness));
      expect(Math.abs(deposit / kept - 1)).toBeLessThan(0.05);
      left -= kept;
    }
  });

  test('floats them up sooner by the week: the room for the valve shrinks', () => {
    const mostOpen = [4, 9, 11].map((weeks) => {
      const { along } = mapOf(holding(weeks / 9), 'valves', 5);
      return along.x.find(({ from, to }) => from <= valve && valve <= to)!.to;
    });
    expect(mostOpen[0]).toBe(1);
    expect(mostOpen[1]!).toBeLessThan(1);
    expect(mostOpen[2]!).toBeLessThan(mostOpen[1]!);
  });
});

describe('its bottom valve', () => {
  test('opened wide, the rest as it is, floats the media up', () => {
    const wide = setTo(1);
    expect(balance(wide).lift).toBeGreaterThan(1);
    const check = channelingCheck({ scenario: wide, balance: balanceOf(wide) })!;
    expect(check.verdict).toBe('fail');
    expect(check.places.find(({ name }) => name === 'lift')?.verdict).toBe('fail');
  });

  test('opened wide does not when the media have been rinsed', () => {
    expect(balance(setTo(1, holding(0))).lift).toBeLessThan(1);
  });

  test('is about half closed, and there the media stay down', () => {
    expect(Math.abs(valve - 0.5)).toBeLessThan(0.1);
    expect(balance(site).lift).toBeLessThan(0.8);
  });
});

describe('its map of all valve settings', () => {
  const map = mapOf(site);
  const holds = ({ points }: OperatingMap): number =>
    points.filter(({ found, fails }) => found && fails === null).length;

  test('has settings where channeling fails and settings where all checks hold', () => {
    const named = new Set(map.points.filter(({ found }) => found).map(({ fails }) => fails));
    expect(named).toContain('channeling');
    expect(named).toContain(null);
    expect(map.now.fails).toBe(null);
  });

  test('ends, as the bottom valve is opened from where it is, where the media lift', () => {
    const own = map.along.x.find(({ from, to }) => from <= valve && valve <= to)!;
    expect(own.above).toBe('channeling');
    expect(own.to).toBeLessThan(1);
    expect(balance(setTo(own.to + 0.01)).channeled! > 0.1 || balance(setTo(own.to + 0.01)).lift! > 1).toBe(true);
  });

  test('has the more room the less has settled', () => {
    const room = [0, 1, 1.15].map((times) => holds(times === 1 ? map : mapOf(holding(times))));
    expect(room[0]!).toBeGreaterThan(room[1]!);
    expect(room[1]!).toBeGreaterThan(room[2]!);
  });
});
