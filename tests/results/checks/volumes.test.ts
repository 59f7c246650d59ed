/** Volume, filling, turnover and loss against sums by hand. */
import { describe, expect, test } from 'vitest';
import { fillingCheck } from '../../../sim/results/checks/filling.ts';
import { lossCheck } from '../../../sim/results/checks/loss.ts';
import { turnoverCheck } from '../../../sim/results/checks/turnover.ts';
import { volumeCheck } from '../../../sim/results/checks/volume.ts';
import { answerOf, checked, inputOf, siteWith, upright } from './site.ts';

/** Water in main and both feeds, m³. */
const pipes = (Math.PI / 4) * (0.078 ** 2 * 9 + 2 * 0.063 ** 2 * 2);

describe('volume', () => {
  test('of a pond with upright banks, a shelf and gravel, piece by piece', () => {
    const scenario = siteWith((file) => {
      file.pond = {
        ...file.pond,
        profile: undefined,
        shape: {
          plan: 'rectangle',
          length: 4,
          width: 3,
          depth: 1,
          shelves: [{ depth: 0.3, width: 0.4 }],
          gravel: 0.1,
        },
        fillMark: -0.05,
        level: -0.05,
      };
      delete file.pond.profile;
    });
    const above = 4 * 3 * 0.25;
    const below = 3.2 * 2.2 * 0.7;
    const gravel = 3.2 * 2.2 * 0.1 * 0.6;
    const check = answerOf(volumeCheck, scenario);
    expect(check.value).toBeCloseTo(above + below - gravel, 9);
    expect(check.says).toContain('one centimeter of level is 120 L');
    expect(check.says).toContain('would hold 12,000 L');
  });

  test('of a rectangle with sloping banks: the frustum by the prismoidal formula', () => {
    const scenario = siteWith((file) => {
      delete file.pond.profile;
      Object.assign(file.pond, { shape: { plan: 'rectangle', length: 5, width: 4, depth: 0.8, slope: 0.5 } });
      Object.assign(file.pond, { level: 0, fillMark: 0 });
      file.pond.rim.crest = [
        [0, 0.1],
        [1, 0.1],
      ];
    });
    const area = (d: number): number => (5 - d) * (4 - d);
    const frustum = (0.8 / 6) * (area(0) + 4 * area(0.4) + area(0.8));
    expect(Math.abs((answerOf(volumeCheck, scenario).value ?? 0) / frustum - 1)).toBeLessThan(1e-3);
  });

  test('is told in the display’s own units', () => {
    const check = answerOf(
      volumeCheck,
      siteWith((file) => (file.display = 'us')),
    );
    // 12 m² × 0.7 m = 8.4 m³ = 2,219 gal; an inch of 12 m² is 0.3048 m³ = 80.5 gal.
    expect(check.says).toContain('2,219 gal');
    expect(check.says).toContain('one inch of level is 81 gal');
  });
});

describe('filling', () => {
  const low = (change: (file: ReturnType<typeof upright>) => void = () => {}) =>
    siteWith((file) => {
      file.pump.running = false;
      file.start = 'standing';
      file.pond.level = -0.25;
      change(file);
    });

  test('takes what pond and vault hold between the levels, over the flow', () => {
    const check = answerOf(fillingCheck, low());
    const volume = (12 + 0.5) * 0.15;
    expect(Math.abs((check.value ?? 0) / (volume / (0.02 / 60)) - 1)).toBeLessThan(1e-3);
    expect(check.verdict).toBe('told');
    expect(check.t).toBe(check.value);
    // 1.875 m³ at 20 L/min: 1 h 33 min 45 s after 06:00.
    expect(check.says).toContain('1 h 34 min, at 07:33');
    expect(check.says).toContain('1,875 L');
  });

  test('from empty takes the whole of pond, vault and the pipe up to that level', () => {
    const check = answerOf(
      fillingCheck,
      low((file) => (file.pond.level = 'empty')),
    );
    const pipe = (pipes / (1.1 + 0.95)) * (0.95 - 0.1);
    const volume = 12 * 0.7 + 0.5 * 0.9 + pipe;
    expect(Math.abs((check.value ?? 0) / (volume / (0.02 / 60)) - 1)).toBeLessThan(1e-4);
  });

  test('a pond of which the file names no level is filled from empty, and says so', () => {
    const empty = answerOf(
      fillingCheck,
      low((file) => (file.pond.level = 'empty')),
    );
    const unnamed = answerOf(
      fillingCheck,
      low((file) => {
        file.pond.fillMark ??= -0.1;
        delete (file.pond as { level?: unknown }).level;
      }),
    );
    expect(unnamed.value).toBe(empty.value);
    expect(unnamed.says).toMatch(/^From empty, the hose/);
  });

  test('counts the clock from the first opening and adds to the meter', () => {
    const check = answerOf(
      fillingCheck,
      low((file) => {
        file.supply.hose.meter = '1.5 m3';
        file.actions = [{ at: '1 h', do: 'hose', to: 'on' }];
      }),
    );
    expect(check.says).toContain('at 08:33');
    expect(check.says).toMatch(/reads 3\.37\d m³/);
  });

  test('adds up the hoses that run, and only those', () => {
    const two = low((file) => {
      file.supply.hose = [
        { name: 'north', flow: '20 L/min', on: true },
        { name: 'south', flow: '30 L/min', on: true },
        { name: 'shut', flow: '90 L/min' },
      ];
    });
    const check = answerOf(fillingCheck, two);
    expect(Math.abs((check.value ?? 0) / ((12.5 * 0.15) / (0.05 / 60)) - 1)).toBeLessThan(1e-3);
    expect(check.says).toContain('The 2 hoses together (50.0 L/min)');
  });

  test('never ends where a leak takes as much as runs in', () => {
    const leak = { elevation: -0.5, area: 3e-4 };
    const check = answerOf(
      fillingCheck,
      low((file) => (file.pond.leak = leak)),
    );
    expect(check.value).toBeNull();
    expect(check.says).toContain('loses as much as runs in');
  });

  test('is over where the pond stands at its mark', () => {
    expect(answerOf(fillingCheck, checked(upright())).value).toBe(0);
  });

  test('asks nothing without a hose', () => {
    expect(fillingCheck(inputOf(siteWith((file) => delete file.supply)))).toBeUndefined();
  });
});

describe('turnover', () => {
  test('is all the water of the balance over the flow', () => {
    const scenario = checked(upright());
    const input = inputOf(scenario);
    const { levels, flows } = input.balance!.answer;
    // Filter by hand: 0.5 m² less the solids of the two layers, 0.49 (0.1 × 0.1 + 0.25 × 0.2).
    const filter = 0.5 * (levels.filter - 0.3) - 0.49 * (0.1 * 0.1 + 0.25 * 0.2);
    const riser = (pipes / (1.1 + 0.95)) * (1.1 + 0.95 + 0.05 * (levels.riser - 1.1));
    const all = 12 * 0.7 + 0.5 * (levels.vault + 1) + filter + riser + (levels.pool - 0.3);
    const check = answerOf(turnoverCheck, scenario);
    expect((check.value ?? 0) / (all / flows.main)).toBeCloseTo(1, 9);
    expect(check.verdict).toBe('told');
    expect(check.says).toContain('once an hour');
  });
});

describe('loss', () => {
  test('is evaporation from the open water, splash of the falls and what leaks', () => {
    const scenario = siteWith((file) => {
      file.weather = { evaporation: '6 mm/d' };
      file.pond.plantCover = 0.25;
      file.watercourse[0].stones[0].splash = 0.0002;
      file.pond.leak = { elevation: -0.4, area: 1e-7 };
    });
    const input = inputOf(scenario);
    const open = 12 * 0.75 + 0.5 + 1;
    const evaporation = (0.006 / 86400) * open;
    const splash = 0.0002 * input.balance!.answer.flows['broad stone'];
    const leak = 1e-7 * Math.sqrt(2 * 9.80665 * 0.3);
    const week = ((evaporation + splash + leak) * 7 * 86400) / 12.5;
    const check = answerOf(lossCheck, scenario);
    expect((check.value ?? 0) / week).toBeCloseTo(1, 6);
    expect(check.says).toContain('63 L to evaporation');
  });

  test('tells the month of the start and the driest', () => {
    const rates = ['1', '1', '2', '3', '4', '5', '7', '6', '4', '2', '1', '1'].map((mm) => `${mm} mm/d`);
    const check = answerOf(
      lossCheck,
      siteWith((file) => (file.weather = { evaporation: rates })),
    );
    expect(check.value).toBeCloseTo((0.005 * 7 * 13.5) / 12.5, 9);
    expect(check.says).toContain('In July');
  });

  test('counts what runs over edges while the pump runs', () => {
    const check = answerOf(
      lossCheck,
      siteWith((file) => {
        file.filter.rim.crest = [
          [0, 1.02],
          [2.6, 1.02],
        ];
      }),
    );
    expect(check.says).toContain('over edges');
  });
});
