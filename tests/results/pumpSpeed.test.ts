/**
 * A pump driven slower or faster, everywhere it counts: against a pump whose own curve is what the affinity laws make
 * of it (flow with the speed, head with its square, power with its cube; Karassik et al., Pump Handbook, from memory).
 */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import type { Check, RunAnswer } from '../../sim/results/answer.ts';
import { simulate } from '../../sim/simulate.ts';
import { type File, siteWith } from '../clogging/sites.ts';

type Change = (file: File) => void;

/** Off and on again in a run, so that 'on' is asked as well as the start. */
const answered = (...changes: readonly Change[]): RunAnswer =>
  simulate(
    siteWith((file) => {
      file.span = '4 h';
      file.actions = [
        { at: '1 h', do: 'pump', to: 'off' },
        { at: '2 h', do: 'pump', to: 'on' },
      ];
      file.pump.power = [
        [0, 150],
        [0.003, 260],
        [0.006, 320],
      ];
      for (const change of changes) change(file);
    }),
  ).answer;

const drive =
  (speed: number): Change =>
  ({ pump }) => {
    pump.speed = speed;
  };

/** The pump that at its full speed gives what another gives at n. */
const turn =
  (n: number): Change =>
  ({ pump }) => {
    const { curve, power } = pump;
    pump.curve = Array.isArray(curve)
      ? curve.map(([q, h]: [number, number]) => [n * q, n ** 2 * h])
      : { flow: n * curve.flow, head: n ** 2 * curve.head };
    pump.power = power.map(([q, watts]: [number, number]) => [n * q, n ** 3 * watts]);
  };

/** The box's two figures alone, and the standing pump's loss from the curve they make. */
const box: Change = ({ pump }) => {
  pump.curve = { flow: 0.0085, head: 5.2 };
  delete pump.standingLoss;
};

/** The intake shuts for an hour, so that the pump draws the vault down to its switch. */
const blocked: Change = (file) => {
  file.actions = [
    { at: '1 h', do: 'blockage', of: 'intake', to: 1 },
    { at: '2 h', do: 'blockage', of: 'intake', to: 0 },
  ];
};

const dark: Change = (file) => {
  file.actions = [{ at: '1 h', do: 'power', to: 'off', for: '20 min' }];
};

/** To the tolerances of root and integrator; figures within a tenth of a milliliter or micrometer of none are none. */
const alike = (own: number, other: number, what: string): void =>
  expect(Math.abs(own - other), what).toBeLessThan(1e-9 * Math.abs(other) + 1e-10);

function expectAlike(own: RunAnswer, other: RunAnswer): void {
  for (const [name, range] of Object.entries(own.flows)) {
    alike(range.end, other.flows[name]!.end, name);
    alike(range.max.value, other.flows[name]!.max.value, `${name} at its most`);
  }
  for (const [name, range] of Object.entries(own.levels))
    alike(range.max.value, other.levels[name]!.max.value, `${name} at its highest`);
  alike(own.energy, other.energy, 'energy');
  expect(own.events.map(({ what }) => what)).toEqual(other.events.map(({ what }) => what));
  own.events.forEach(({ t, what }, i) => {
    alike(t, other.events[i]!.t, what);
  });
}

function expectSameCheck(own: Check, other: Check): void {
  expect([own.name, own.verdict, own.rests?.place]).toEqual([other.name, other.verdict, other.rests?.place]);
  for (const figure of ['value', 'limit', 'margin', 'band', 't'] as const) {
    const [a, b] = [own[figure], other[figure]];
    if (a === null || b === null) expect([own.name, figure, a]).toEqual([own.name, figure, b]);
    // A level is flat where it is highest: its moment is known to the root of its own rounding only.
    else if (figure === 't') expect(Math.abs(a - b), own.name).toBeLessThan(1);
    else alike(a, b, `${own.name}: ${figure}`);
  }
  expect(own.places.map(({ name, verdict }) => [name, verdict])).toEqual(
    other.places.map(({ name, verdict }) => [name, verdict]),
  );
}

const nothing: Change = () => {};

describe.each([
  ['at 85 % of its full speed', 0.85, nothing],
  ['at 120 %', 1.2, nothing],
  ['known by its box alone, at 85 %', 0.85, box],
  ['known by its box alone, at 120 %', 1.2, box],
] as const)('a pump %s', (_, n, change) => {
  const driven = answered(change, drive(n));
  const turned = answered(change, turn(n));

  test('runs the site as a pump of that curve does, after a stop too, and for the same bill', () => {
    expectAlike(driven, turned);
    const more = driven.flows.main!.end / answered(change).flows.main!.end - 1;
    expect(more / (n - 1)).toBeGreaterThan(0.5);
  });

  test('is judged the same by every check and trial', () => {
    expect(driven.checks.length).toBeGreaterThan(12);
    expect(driven.checks.map(({ name }) => name)).toEqual(turned.checks.map(({ name }) => name));
    driven.checks.forEach((check, i) => {
      expectSameCheck(check, turned.checks[i]!);
    });
  });

  test('is told its speed where its last point is', () => {
    const says = ({ checks }: RunAnswer): string | undefined => checks.find(({ name }) => name === 'duty')?.says;
    expect(says(driven)).toContain(`at ${100 * n} % of its full speed`);
    expect(says(turned)).not.toContain('of its full speed');
  });
});

describe.each([0.85, 1.2])('a pump at %f of its full speed that stops by itself', (n) => {
  const end = balance(siteWith(drive(n))).flows.main!;

  test('trips where the vault is low and comes back at its own speed', () => {
    const driven = answered(blocked, drive(n));
    expect(driven.events.map(({ what }) => what)).toEqual(expect.arrayContaining(['cut-out', 'restart']));
    expectAlike(driven, answered(blocked, turn(n)));
    expect(Math.abs(driven.flows.main!.end / end - 1)).toBeLessThan(1e-2);
  });

  test('comes back at its own speed after a cut of the power', () => {
    const driven = answered(dark, drive(n));
    expect(driven.events.map(({ what }) => what)).toEqual(expect.arrayContaining(['power off', 'power on']));
    expectAlike(driven, answered(dark, turn(n)));
    expect(driven.flows.main!.min.value).toBeLessThan(1e-9);
    expect(Math.abs(driven.flows.main!.end / end - 1)).toBeLessThan(1e-2);
  });
});
