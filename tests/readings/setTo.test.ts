import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { ballValveLoss } from '../../sim/laws/valve.ts';
import { rodReadings } from '../../sim/readings/rods.ts';
import { risingRoot } from '../../sim/readings/root.ts';
import { angleWords, setTo, type ValveSetting, type Wish } from '../../sim/readings/setTo.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { siteOf } from './sites.ts';

function set(s: Scenario, wish: Wish): ValveSetting {
  const to = setTo(s, wish);
  if (!to.ok) throw new Error(to.says);
  return to;
}

/** A site whose top valve's real loss is a multiple of what its table says. */
function withTopValveOff(s: Scenario, factor: number): { site: Scenario; really: (handle: number) => number } {
  const really = (handle: number): number =>
    handle <= 0 ? 0 : risingRoot((x) => ballValveLoss(handle) * factor - ballValveLoss(x), 1e-3, 1, 1e-9);
  return { site: s, really };
}

describe('a wish put into the balance by the valves found for it', () => {
  test.each<[string, Wish]>([
    ['courtyard', { share: 0.5, head: 0.025 }],
    ['courtyard', { share: 0.8, head: 0.018 }],
    ['courtyard', { share: 1, head: 0.02 }],
    ['courtyard', { share: 0, head: 0.02 }],
    ['courtyard', { share: 0.4, over: 'lip', head: 0.02 }],
    ['storm', { share: 0.6, head: 0.028 }],
    // No filter and no top feed; no filter and no bottom feed.
    ['gravel-basin', { head: 0.02 }],
    ['low-edge', { head: 0.015 }],
    ['first-start', { over: 'upper step', head: 0.018 }],
    ['dammed-stream', { head: 0.02 }],
  ])('comes out to 0.5 %%: %s %o', (name, wish) => {
    const to = set(siteOf(name), wish);
    const { split, stones, levels } = balance(to.scenario);
    const lip = to.scenario.filter && levels.filter - Math.min(...to.scenario.filter.lip.crest.map(([, z]) => z));
    const head = to.over === 'lip' ? lip! : stones[to.over].head;
    expect(to.reached).toBe(true);
    expect(Math.abs(head / wish.head! - 1)).toBeLessThan(0.005);
    if (wish.share !== undefined) expect(Math.abs(split! - wish.share)).toBeLessThan(0.005 * Math.max(wish.share, 0.1));
    for (const handle of [to.valves.bottom, to.valves.top])
      if (handle) expect(handle.angle).toBeCloseTo(90 - 90 * handle.opening, 9);
    expect(to.turns.at(-1)!.heads![to.over]).toBeCloseTo(head, 6);
  });

  test('keeps its split where only the depth is wished, and opens all it can where only the split is', () => {
    const site = siteOf('courtyard');
    expect(set(site, { head: 0.02 }).share).toBeCloseTo(balance(site).split!, 3);
    const widest = set(site, { share: 0.5 });
    expect(Math.max(widest.valves.bottom!.opening, widest.valves.top!.opening)).toBe(1);
    expect(widest.share).toBeCloseTo(0.5, 3);
  });

  test('is the nearest where the pump gives no more, and says so with both figures', () => {
    const site = siteOf('courtyard');
    const to = set(site, { share: 0.5, head: 0.06 });
    expect(to.reached).toBe(false);
    expect(to.share).toBeCloseTo(0.5, 3);
    expect(to.heads['broad stone']).toBeCloseTo(set(site, { share: 0.5 }).heads['broad stone'], 5);
    expect(to.says).toMatch(/^60 mm as the water over ‘broad stone’ can’t be had: the nearest is \d\d mm/);
  });

  test('says where there is no second feed to split with', () => {
    const to = set(siteOf('gravel-basin'), { share: 0.5, head: 0.02 });
    expect(to.reached).toBe(false);
    expect(to.says).toContain('There is no top feed.');
  });

  test.each<[Wish, RegExp]>([
    [{ head: -0.01 }, /more than nothing/],
    [{ head: 'a lot' as unknown as number }, /more than nothing/],
    [{ head: 0.4 }, /280 mm above the edge of ‘upper pool’/],
    [{ share: 1.4 }, /between none and all/],
    [{ over: 'no such stone', head: 0.02 }, /No stone here is called ‘no such stone’/],
  ])('is refused in words where it can’t be: %o', (wish, says) => {
    const to = setTo(siteOf('courtyard'), wish);
    expect(to).toEqual({ ok: false, says: expect.stringMatching(says) });
  });
});

describe('turning by the ruler', () => {
  test('ends at the wished split though the top valve has half or twice the loss of its table', () => {
    const wish = { share: 0.6, head: 0.024 };
    const to = set(siteOf('courtyard'), wish);
    const [shut, first, second] = to.turns;
    expect([shut.does, first.valve === second.valve]).toEqual(['shut', false]);
    for (const factor of [0.5, 2]) {
      const { site, really } = withTopValveOff(siteOf('courtyard'), factor);
      const at = (bottom: number, top: number) => {
        const { bottomFeed, topFeed } = site.plumbing;
        const feeds = { bottomFeed: { ...bottomFeed!, valve: bottom }, topFeed: { ...topFeed!, valve: really(top) } };
        return balance({ ...site, plumbing: { ...site.plumbing, ...feeds } });
      };
      const head = (bottom: number, top: number): number => at(bottom, top).stones['broad stone'].head;
      const wanted = (k: number): number => to.turns[k].heads!['broad stone'];
      // A crew that knows no table: each handle is turned until the ruler shows the figure.
      const bottomFirst = first.valve === 'bottom feed';
      const one = risingRoot((x) => (bottomFirst ? head(x, 0) : head(0, x)) - wanted(1), 0.05, 1, 1e-7);
      const two = risingRoot((x) => (bottomFirst ? head(one, x) : head(x, one)) - wanted(2), 0.05, 1, 1e-7);
      const done = bottomFirst ? at(one, two) : at(two, one);
      expect(done.split!).toBeCloseTo(wish.share, 2);
      expect(done.stones['broad stone'].head).toBeCloseTo(wish.head, 4);
      expect(0.01 / done.flows['top feed']).toBeCloseTo(to.bucket!.seconds, 0);
    }
  });

  test('tells how wide a ruler leaves the split, about the wished one', () => {
    const { share, shareBand } = set(siteOf('storm'), { share: 0.6, head: 0.025 });
    expect(shareBand![0]).toBeLessThan(share - 0.02);
    expect(shareBand![1]).toBeGreaterThan(share + 0.02);
  });

  test('calls an angle as one holds the handle', () => {
    expect(angleWords({ opening: 1, angle: 0 })).toBe('along the pipe (open)');
    expect(angleWords({ opening: 0.6, angle: 36 })).toBe('36° from along the pipe');
    expect(angleWords({ opening: 0, angle: 90 })).toBe('across the pipe (shut)');
  });
});

describe('rod readings', () => {
  test('are the height of the instrument less the elevation, by hand', () => {
    // Differential leveling: benchmark 0.250 m, rod on it 1.412 m: line of sight 1.662 m.
    const rods = rodReadings(siteOf('courtyard'), { benchmark: 0.25, reading: 1.412 });
    const rod = Object.fromEntries(rods.map((each) => [each.name, Number(each.rod.toFixed(6))]));
    expect(rod).toEqual({
      edge: 1.662,
      'fill mark': 1.772,
      'filter’s lip': 0.612,
      'broad stone': 1.042,
      'corner stone': 1.032,
      tee: 1.542,
    });
    const stone = rods.find(({ name }) => name === 'broad stone')!;
    expect(stone.points.map((p) => Number(p.rod.toFixed(6)))).toEqual([1.038, 1.042, 1.04]);
    expect(rods.some(({ above }) => above)).toBe(false);
  });

  test('tell what stands above the line of sight', () => {
    const rods = rodReadings(siteOf('courtyard'), { benchmark: 0, reading: 0.9 });
    expect(rods.filter(({ above }) => above).map(({ name }) => name)).toEqual(['filter’s lip']);
  });
});
