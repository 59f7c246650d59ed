/** A fill with the pump started at a mark, against the water that filter, pipe and vault hold by their own shapes. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { fillBand, fillBandWords } from '../../sim/fill/band.ts';
import { fillPlan } from '../../sim/fill/plan.ts';
import { AREA, FLOW, fullAt, MARK, planOf, siteOf, VAULT } from './sites.ts';

type File = Parameters<NonNullable<Parameters<typeof siteOf>[0]>>[0];

const BOX = 1;
const BOTTOM = 0.3;
const LIP = 1;

/** The same pond with a filter of 1 m² whose lip is 0.7 m over its floor; what passes it falls back into the pond. */
const withFilter = (file: File): void => {
  file.filter = {
    profile: [
      [BOTTOM, BOX],
      [1.3, BOX],
    ],
    lip: {
      crest: [
        [0, LIP],
        [0.6, LIP],
      ],
      cd: 1,
    },
    rim: {
      crest: [
        [0, 1.25],
        [1, 1.25],
      ],
    },
  };
  file.plumbing.bottomFeed.inlet = 0.35;
};

describe('the pump started at the fill mark', () => {
  const pumped = planOf(withFilter, { pumpAt: MARK });
  const resting = planOf(withFilter);
  const { upstairs } = pumped;

  test('takes up what the filter holds to its level in the running balance, and the pipe', () => {
    const { levels, flows } = balance(
      siteOf((file) => {
        withFilter(file);
        file.pond.level = MARK;
      }),
    );
    // The lip's own law: Q = 1.7046 · 0.6 · h^1.5.
    const head = (flows['main'] / (1.7046 * 0.6)) ** (2 / 3);
    expect(levels['filter'] - LIP).toBeCloseTo(head, 3);
    // The pipe's 9.8 L less the 6.1 L that stood in it at the mark; the vault stands lower by what its lip takes.
    const byHand = BOX * (LIP + head - BOTTOM) + 0.0038 - VAULT * (MARK - levels['vault']);
    expect(Math.abs((upstairs?.missing ?? 0) / byHand - 1)).toBeLessThan(0.005);
  });

  test('shifts the clock by that water over the hose’s flow', () => {
    expect(fullAt(pumped) - fullAt(resting)).toBeCloseTo((upstairs?.missing ?? 0) / FLOW, 0);
    expect(upstairs?.on.t).toBeCloseTo(fullAt(resting), 0);
    expect(upstairs?.lasts).toBeCloseTo((upstairs?.more ?? 0) / FLOW, 3);
    expect(upstairs?.more).toBeCloseTo(upstairs?.missing ?? 0, 4);
    expect(pumped.marks.at(-1)?.reached).toEqual(pumped.full);
  });

  test('lets the pond fall by that water over its area, with the hose shut', () => {
    expect(Math.abs((upstairs?.fallsShut ?? 0) / ((upstairs?.missing ?? 0) / (AREA + VAULT)) - 1)).toBeLessThan(0.03);
    expect(upstairs?.falls).toBeLessThan(upstairs?.fallsShut ?? 0);
    // What the hose gives until then is the difference, but for the last of the filter's rise.
    const given = (FLOW * ((upstairs?.lowest.t ?? 0) - (upstairs?.on.t ?? 0))) / (AREA + VAULT);
    const fall = ((upstairs?.falls ?? 0) + given) / (upstairs?.fallsShut ?? 0);
    expect(fall).toBeGreaterThan(0.97);
    expect(fall).toBeLessThan(1.001);
    expect(upstairs?.starves).toBe(false);
    expect(upstairs?.starvesShut).toBe(false);
  });

  test('leaves the pond at its mark in the end', () => {
    expect(Math.abs((pumped.series.pond.at(-1) ?? 0) - MARK)).toBeLessThan(1e-3);
    expect(Math.min(...pumped.series.pond.slice(200))).toBeLessThan(MARK - 0.04);
  });

  test('at a lower mark it is full at the same time: the water is the same', () => {
    const sooner = planOf(withFilter, { pumpAt: -0.3 });
    expect(sooner.upstairs?.on.t).toBeLessThan(upstairs?.on.t ?? 0);
    expect(fullAt(sooner)).toBeCloseTo(fullAt(pumped), 0);
  });

  test('says that a small vault behind a high intake runs dry', () => {
    const small = planOf(
      (file) => {
        withFilter(file);
        file.intake = { width: 0.3, elevation: -0.12 };
        file.pump.minimum = -0.3;
      },
      { pumpAt: MARK },
    );
    expect(small.upstairs?.vault.minimum).toBe(-0.3);
    expect(small.upstairs?.starves).toBe(true);
    expect(small.upstairs?.vault.level).toBeLessThan(-0.3);
  });

  test('is not started where its mark is never reached', () => {
    const plan = planOf(
      (file) => {
        withFilter(file);
        file.pond.leak = { elevation: -0.8, area: 2e-4 };
      },
      { pumpAt: MARK },
    );
    expect(plan).toMatchObject({ full: null, never: 'weak', upstairs: null });
  });
});

describe('the band of a fill', () => {
  test('of a bucket test good to a twentieth is a twentieth of the time, and 5 mm of the pond', () => {
    const band = fillBand(siteOf());
    const time = fullAt(planOf());
    // Half the change between 0.95 and 1.05 of the flow.
    const flow = (time * (1 / 0.95 - 1 / 1.05)) / 2;
    expect(band?.band).toBeCloseTo(flow + (0.005 * AREA) / FLOW, 0);
    expect(band && fillBandWords(siteOf(), band)).toBe('the bucket test');
  });

  test('of several hoses adds up as independent errors do', () => {
    const s = siteOf((file) => {
      file.supply.hose = [
        { name: 'north', flow: '10 L/min', on: true },
        { name: 'south', flow: '10 L/min', on: true },
      ];
    });
    const two = (fillBand(s)?.band ?? 0) - (0.005 * AREA) / FLOW;
    const one = (fillBand(siteOf())?.band ?? 0) - (0.005 * AREA) / FLOW;
    expect(two / one).toBeCloseTo(Math.SQRT1_2, 2);
  });

  test('of an outline that is not known names the outline', () => {
    const s = siteOf((file) => {
      const { level, fillMark, rim } = file.pond;
      file.pond = { shape: { plan: 'freeform', length: 4, width: 3, depth: 0.8, brim: 0.05 }, level, fillMark, rim };
      file.intake.elevation = -0.75;
      file.vault.profile[0][0] = -0.8;
      file.supply.hose.flow = '20 L/min';
    });
    const band = fillBand(s);
    expect(band?.most?.assumption.place).toBe('hoses[0].flow');
    const sure = fillBand({ ...s, assumed: [...s.assumed.filter(({ place }) => place !== 'pond.shape.plan')] });
    expect(band?.band).toBeGreaterThan(sure?.band ?? Number.POSITIVE_INFINITY);
  });

  test('of a hose by its pressure is wide, and names the pressure', () => {
    const s = siteOf((file) => (file.supply.hose = { pressure: '45 psi', length: '50 ft', bore: '5/8 in' }));
    const plan = fillPlan(s);
    expect(plan?.hoses[0].by).toBe('pressure');
    const band = fillBand(s);
    expect((band?.band ?? 0) / (plan?.lasts ?? 1)).toBeGreaterThan(0.3);
    expect(band && fillBandWords(s, band)).toBe('the pressure at the tap');
    expect(s.assumed).toContainEqual(expect.objectContaining({ place: 'supply.hose.flow' }));
    // A bucket test beside it wins.
    const both = siteOf(
      (file) => (file.supply.hose = { flow: '20 L/min', pressure: '45 psi', length: 15, bore: 0.016 }),
    );
    expect(fillPlan(both)?.lasts).toBe(fillPlan(siteOf())?.lasts);
  });

  test('is none where it never is full', () => {
    expect(fillBand(siteOf((file) => (file.pond.leak = { elevation: -0.8, area: 2e-4 })))).toBeUndefined();
  });
});
