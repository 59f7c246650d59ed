/** Falls, split, channeling and headroom: where the water goes. */
import { describe, expect, test } from 'vitest';
import { channelingCheck } from '../../../sim/results/checks/channeling.ts';
import { fallsCheck } from '../../../sim/results/checks/falls.ts';
import { headroomCheck } from '../../../sim/results/checks/headroom.ts';
import { splitCheck } from '../../../sim/results/checks/split.ts';
import { balanceOf, raise, withStone } from '../../../sim/results/checks/variants.ts';
import { answerOf, checked, figureAfter, inputOf, siteWith, upright } from './site.ts';

describe('falls', () => {
  test('the main stone leads, its share beside that of the next', () => {
    const check = answerOf(fallsCheck, checked(upright()));
    const { stones } = inputOf(checked(upright())).balance!.answer;
    expect([check.verdict, check.value]).toEqual(['pass', stones['broad stone'].share]);
    expect(check.limit).toBe(stones['side stone'].share);
    expect((check.value ?? 0) + (check.limit ?? 0)).toBeCloseTo(1, 9);
    expect(check.places.map(({ name, verdict }) => [name, verdict])).toEqual([['side stone', 'told']]);
  });

  test('a side stone that takes more is mended by the least whole millimeter', () => {
    const scenario = siteWith((file) => {
      file.watercourse[0].stones[1].crest = [
        [0, 0.596],
        [1.1, 0.596],
      ];
    });
    const check = answerOf(fallsCheck, scenario);
    expect(check.verdict).toBe('fail');
    const raised = (mm: number): number =>
      balanceOf(withStone(scenario, 'side stone', (x) => raise(x, mm / 1000)))!.answer.stones['broad stone'].share;
    const by = figureAfter(check.mend, 'aise ‘side stone’ by', 'mm');
    expect(raised(by)).toBeGreaterThanOrEqual(0.5);
    expect(raised(by - 1)).toBeLessThan(0.5);
    const lowered = (mm: number): number =>
      balanceOf(withStone(scenario, 'broad stone', (x) => raise(x, -mm / 1000)))!.answer.stones['broad stone'].share;
    const down = figureAfter(check.mend, 'lower ‘broad stone’ by', 'mm');
    expect(lowered(down)).toBeGreaterThanOrEqual(0.5);
    expect(lowered(down - 1)).toBeLessThan(0.5);
  });

  test('a main stone under leaves is cleared first', () => {
    const check = answerOf(
      fallsCheck,
      siteWith((file) => (file.watercourse[0].stones[0].blockage = 0.9)),
    );
    expect(check.verdict).toBe('fail');
    expect(check.mend).toMatch(/^Clear the leaves off ‘broad stone’, or /);
  });

  test('without a main stone nothing can fail; without a stone nothing is asked', () => {
    const none = siteWith((file) => delete file.watercourse[0].stones[0].main);
    expect(answerOf(fallsCheck, none)).toMatchObject({ verdict: 'told', limit: null, margin: null });
    expect(fallsCheck(inputOf(siteWith((file) => delete file.watercourse)))).toBeUndefined();
  });
});

describe('split', () => {
  test('of two equal feeds into one water is a half', () => {
    const scenario = siteWith((file) => {
      delete file.filter.media;
      file.plumbing.topFeed = { ...file.plumbing.bottomFeed, outlet: 0.3 };
      delete file.plumbing.topFeed.inlet;
    });
    const check = answerOf(splitCheck, scenario);
    expect(check.value).toBeCloseTo(0.5, 9);
    expect(check.verdict).toBe('told');
  });

  test('asks nothing where there is one way only', () => {
    expect(splitCheck(inputOf(siteWith((file) => delete file.plumbing.topFeed)))).toBeUndefined();
    expect(splitCheck(inputOf(siteWith((file) => delete file.filter)))).toBeUndefined();
  });
});

describe('channeling', () => {
  const gap = (width: number | undefined) =>
    siteWith((file) => {
      if (width === undefined) delete file.filter.media.gap;
      else file.filter.media.gap = width;
    });

  test('is what slips through the gap of all that comes up', () => {
    const scenario = gap(0.004);
    const { flows } = balanceOf(scenario)!.answer;
    const check = answerOf(channelingCheck, scenario);
    expect(check.value).toBeCloseTo(flows.gap / (flows.gap + flows.media), 12);
    expect([check.limit, check.origin, check.verdict]).toEqual([0.1, 'our default', 'pass']);
    expect(check.says).not.toMatch(/bypass|Nobody/);
  });

  test('of a gap that was not measured is a band, and tight by it', () => {
    const check = answerOf(channelingCheck, gap(undefined));
    const [narrow, wide] = [0, 0.02].map((width) => answerOf(channelingCheck, gap(width)).value ?? 0);
    expect(check.verdict).toBe('tight');
    expect(check.band).toBeGreaterThan((wide! - narrow!) / 2 - 1e-9);
    expect(check.says).toContain('from 0 mm to 20 mm');
    const widest = figureAfter(check.mend, 'up to', 'mm');
    expect(answerOf(channelingCheck, gap(widest / 1000)).value).toBeLessThanOrEqual(0.1);
    expect(answerOf(channelingCheck, gap(widest / 1000 + 0.0005)).value).toBeGreaterThan(0.1);
  });

  test('of a wide gap fails, and says to what the gap is to be closed', () => {
    const check = answerOf(channelingCheck, gap(0.02));
    expect(check.verdict).toBe('fail');
    const widest = figureAfter(check.mend, 'lose the gap round the mats to', 'mm');
    expect(answerOf(channelingCheck, gap(widest / 1000)).value).toBeLessThanOrEqual(0.1);
  });

  test('takes the limit of the file', () => {
    const scenario = siteWith((file) => (file.limits = { channeling: 0.001 }));
    expect(answerOf(channelingCheck, scenario)).toMatchObject({ verdict: 'fail', limit: 0.001, origin: 'file' });
  });

  test('fails where fine media float up, and the weight it names holds them down', () => {
    const fine = siteWith((file) => {
      file.filter.media.layers[0].grain = 0.00015;
    });
    const check = answerOf(channelingCheck, fine);
    const { lift, flows } = balanceOf(fine)!.answer;
    expect(lift).toBeGreaterThan(1);
    expect(check.verdict).toBe('fail');
    expect(check.places[0]).toMatchObject({ name: 'lift', verdict: 'fail', value: lift });
    expect(check.places[1]?.name).toBe('lift onset');
    expect(check.places[1]?.value).toBeLessThan(flows['bottom feed']!);
    const holdDown = figureAfter(check.mend, 'hold the media down with', 'kg') * 9.80665;
    const held = { ...fine, filter: { ...fine.filter!, media: { ...fine.filter!.media!, holdDown: holdDown + 0.5 } } };
    expect(balanceOf(held)!.answer.lift).toBeLessThan(1);
  });

  test('asks nothing without media', () => {
    expect(channelingCheck(inputOf(siteWith((file) => delete file.filter.media)))).toBeUndefined();
    expect(channelingCheck(inputOf(siteWith((file) => delete file.filter)))).toBeUndefined();
  });
});

describe('headroom', () => {
  test('is the edge less the level, each place against its own marks', () => {
    const scenario = checked(upright());
    const { levels } = balanceOf(scenario)!.answer;
    const check = answerOf(headroomCheck, scenario);
    const rooms = { filter: 1.12 - levels.filter, pool: 0.75 - levels.pool };
    expect(check.value).toBeCloseTo(Math.min(rooms.filter, rooms.pool), 12);
    expect([check.limit, check.origin, check.verdict]).toEqual([0.01, 'our default', 'pass']);
  });

  const lowRim = (z: number) =>
    siteWith((file) => {
      file.filter.rim.crest = [
        [0, z],
        [2.6, z],
      ];
    });

  test('is tight short of 25 mm and fails short of 10', () => {
    const { filter } = balanceOf(checked(upright()))!.answer.levels;
    expect(answerOf(headroomCheck, lowRim(filter + 0.012)).verdict).toBe('tight');
    expect(answerOf(headroomCheck, lowRim(filter + 0.009)).verdict).toBe('fail');
  });

  test('wants 0.6 of a head over 42 mm: a half-blocked lip needs 2^⅔ of its head', () => {
    expect(2 ** (2 / 3) - 1).toBeCloseTo(0.587, 3);
    const scenario = siteWith((file) => {
      file.filter.lip.crest = [
        [0, 1],
        [0.25, 1],
      ];
    });
    const head = balanceOf(scenario)!.answer.levels.filter - 1;
    expect(head).toBeGreaterThan(0.042);
    const rim = (room: number) => ({
      ...scenario,
      filter: { ...scenario.filter!, rim: raise(scenario.filter!.rim, 1 + head + room - 1.12) },
    });
    expect(answerOf(headroomCheck, rim(0.6 * head - 0.001)).verdict).toBe('tight');
    expect(answerOf(headroomCheck, rim(0.6 * head + 0.001)).verdict).toBe('pass');
  });

  test('of a filter that runs over is mended by the height and by the flow it names', () => {
    const narrow = (rim: number) =>
      siteWith((file) => {
        file.filter.lip.crest[1][0] = 0.25;
        file.filter.rim.crest = [
          [0, rim],
          [2.6, rim],
        ];
      });
    const scenario = narrow(1.05);
    const check = answerOf(headroomCheck, scenario);
    expect(check.value).toBeLessThan(0);
    expect(check.verdict).toBe('fail');
    const by = figureAfter(check.mend, 'edge of the filter by', 'mm') / 1000;
    expect(answerOf(headroomCheck, narrow(1.05 + by)).verdict).toBe('pass');
    expect(answerOf(headroomCheck, narrow(1.05 + by - 0.001)).verdict).toBe('tight');
    const flow = Number(/down from [0-9.]+ L\/min to ([0-9.]+) L\/min/.exec(check.mend)?.[1]) / 60000;
    // 25 of the 50 mm between lip and edge, over a sharp lip 0.25 m wide.
    const most = 1.08 * (2 / 3) ** 1.5 * Math.sqrt(9.80665) * 0.25 * 0.025 ** 1.5;
    expect(flow).toBeLessThanOrEqual(most * 1.001);
    expect(flow).toBeGreaterThan(0.95 * most);
  });

  test('names heights that the marks of a ruler show, and that hold as printed', () => {
    const narrow = (rim: number) =>
      siteWith((file) => {
        file.display = 'us';
        file.filter.lip.crest[1][0] = 0.25;
        file.filter.rim.crest = [
          [0, rim],
          [2.6, rim],
        ];
      });
    for (const rim of [1.05, 1.053, 1.056, 1.061, 1.066]) {
      const { mend } = answerOf(headroomCheck, narrow(rim));
      const inches = /edge of the filter by (\d+)? ?(?:(\d)\/(\d))? ?in/.exec(mend) ?? [];
      const [, whole = '0', top = '0', bottom = '8'] = inches;
      const by = 0.0254 * (Number(whole) + Number(top) / Number(bottom));
      expect(by).toBeGreaterThan(0.02);
      expect(answerOf(headroomCheck, narrow(rim + by)).verdict).toBe('pass');
    }
  });

  test('takes the marks of the file', () => {
    const scenario = siteWith((file) => (file.limits = { headroom: [0.2, 0.3] }));
    expect(answerOf(headroomCheck, scenario)).toMatchObject({ verdict: 'fail', limit: 0.2, origin: 'file' });
  });

  test('looks at a stream’s edge too', () => {
    const scenario = siteWith((file) => {
      file.watercourse.push({
        name: 'run',
        kind: 'stream',
        length: 2,
        width: 0.6,
        slope: 0.05,
        foot: 0.02,
        edge: { height: 0.03, length: 0.5 },
      });
    });
    const check = answerOf(headroomCheck, scenario);
    expect(check.says).toContain('‘run’');
    expect(check.verdict).toBe('fail');
  });
});
