import { describe, expect, test } from 'vitest';
import { run } from '../../sim/simulate.ts';
import { labSite, levelAfter, levelAt, namesOf, stone, timeToFall, topFeed, vee, vessel, walls, weir } from './site.ts';

describe('a site of the laboratory', () => {
  test('stands still as long as no case is put into it', () => {
    const site = labSite({ span: 86400 });
    const { record } = run(site);
    for (const { name } of record.network.parts.basins) {
      expect(levelAt(record, name, 86400), name).toBe(levelAt(record, name, 0));
    }
  });

  test('empties a vessel through a hole by Torricelli', () => {
    const tank = vessel('tank', walls(2), { level: 1, leak: { elevation: 0, area: 1e-3 } });
    const time = ((2 * 2) / 1e-3 / Math.sqrt(2 * 9.80665)) * (1 - Math.sqrt(0.25));
    expect(timeToFall(labSite({ span: 1500, watercourse: [tank] }), 'tank', 0.25)).toBeCloseTo(time, 1);
  });

  test('empties a vessel over a weir as h^−½ grows with time', () => {
    const tank = vessel('tank', walls(2), { level: 1.05, stones: [stone('lip', weir(0.5, 1))] });
    const coefficient = (2 / 3) ** 1.5 * Math.sqrt(9.80665);
    const head = (0.05 ** -0.5 + (coefficient * 0.5 * 60) / 4) ** -2;
    expect(levelAfter(labSite({ span: 60, watercourse: [tank] }), 'tank') - 1).toBeCloseTo(head, 5);
  });

  test('empties a vessel over a V as h^−1.5 grows with time', () => {
    const tank = vessel('tank', walls(8), { level: 1.15, stones: [stone('notch', vee(1, 1))] });
    const k = 0.8 * (2 / 3) ** 1.5 * Math.sqrt(9.80665);
    const time = (2 / 3) * (8 / k) * (0.05 ** -1.5 - 0.15 ** -1.5);
    expect(timeToFall(labSite({ span: 1000, watercourse: [tank] }), 'tank', 1.05)).toBeCloseTo(time, 0);
  });

  test('runs a vessel out through a pipe into another', () => {
    const site = labSite({
      span: 600,
      watercourse: [vessel('lower', walls(1), { level: 0.5 })],
      plumbing: {
        profile: walls(1),
        level: 1.5,
        tee: 0,
        topFeed: topFeed(0, 'lower', { k: 10 }),
        bottomFeed: undefined,
      },
    });
    const { record } = run(site);
    expect(namesOf(site).flows).toContain('top feed');
    const sum = levelAt(record, 'riser', 600) + levelAt(record, 'lower', 600);
    expect(sum).toBeCloseTo(2, 9);
    expect(levelAt(record, 'riser', 600)).toBeCloseTo(1, 2);
  });
});
