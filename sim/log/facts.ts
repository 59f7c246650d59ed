import type { Balance } from '../balance.ts';
import { areaAt } from '../laws/storage.ts';
import { monthAt } from '../network/clock.ts';
import { type Spread, spreadOver } from '../readings/prior.ts';
import { lossesOf } from '../results/checks/loss.ts';
import type { Scenario } from '../scenario/scenario.ts';

const DAY = 86400;
const MM_A_DAY = 0.001 / DAY;

/**
 * How far a figure for evaporation may be off, as a fraction of it, nine times in ten: our default. With radiation,
 * temperature, vapor pressure and heat storage all measured, Penman's equation came within 20 % of the energy budget in
 * more than nine months of ten (Rosenberry et al. 2007, J. Hydrology 340, 149–166); a figure for a site has less behind it.
 */
export const EVAPORATION_OFF = 0.3;
/** Where neither file nor log says anything, m/s: a garden pond's summer, cool to hot and dry. Common practice, no source. */
export const EVAPORATION_UNKNOWN: readonly [low: number, value: number, high: number] = [
  1.5 * MM_A_DAY,
  4 * MM_A_DAY,
  9 * MM_A_DAY,
];
/** What the rise at a pump stop may be off by, m and as a fraction: our default. */
const RISE_OFF = { least: 0.01, share: 0.5 };

/** What a site says of how its level falls, and how well that is known. */
export interface PondFacts {
  /** Area that falls together (pond, and vault) over that at the reference level, by a level relative to it, −. */
  readonly widening: (above: number) => number;
  /** Area at the reference level, m². */
  readonly area: number;
  /** Depth rate of evaporation from open water at seconds after the first line, m/s, at a standard normal figure of its spread. */
  readonly evaporation: (t: number, u: number) => number;
  readonly evaporationFrom: 'log' | 'site' | 'unknown';
  /** Evaporating area over falling area, by whether the pump runs. */
  readonly open: { readonly on: number; readonly off: number };
  /** Fall by the splash the site states, pump running, m/s. */
  readonly splash: number;
  /** What the pond rises at a pump stop, m: its 90 % band. */
  readonly rise: { readonly value: number; readonly off: number } | undefined;
  /** Rain that reaches the pond over rain on it: its banks, and what runs off into it. */
  readonly catches: number;
  readonly autofill: boolean;
}

/** What a log is read on: the site's running balance, how it rises at a stop, and the log's own statements. */
export interface FactsGiven {
  readonly balance: Balance;
  /** Rise of the pond at a stop, m; undefined: none is known. */
  readonly rise: number | undefined;
  /** Elevation that the reference reading stands for, m. */
  readonly reference: number;
  /** The log's own band of evaporation, m/s. */
  readonly evaporation: readonly [low: number, high: number] | undefined;
  /** Clock time of the first line. */
  readonly starts: string;
}

export function factsOf(s: Scenario, given: FactsGiven): PondFacts {
  const { parts } = given.balance.network;
  const basins = [parts.basins[parts.pond], parts.basins[parts.circuit.vault]];
  const areaOf = (z: number): number => basins.reduce((sum, { storage }) => sum + areaAt(storage, z), 0);
  const area = areaOf(given.reference);
  const { evaporation, splash } = lossesOf(s, given.balance, 1);
  const pond = areaAt(basins[0].storage, given.reference);
  const [last] = s.pond.profile.slice(-1);
  const { rise } = given;
  return {
    widening: (above) => Math.max(0.1, areaOf(given.reference + above) / area),
    area,
    ...evaporationOf(s, given),
    open: { on: evaporation / area, off: ((1 - s.pond.plantCover) * pond) / area },
    splash: splash / area,
    rise:
      rise === undefined ? undefined : { value: rise, off: Math.max(RISE_OFF.least, RISE_OFF.share * Math.abs(rise)) },
    catches: (last[1] + s.pond.runoff.area * s.pond.runoff.coefficient) / area,
    autofill: s.autofill !== undefined,
  };
}

function evaporationOf(
  s: Scenario,
  { evaporation: stated, starts }: FactsGiven,
): Pick<PondFacts, 'evaporation' | 'evaporationFrom'> {
  const { evaporation } = s.weather;
  const positive =
    (at: Spread): Spread =>
    (u) =>
      Math.max(0, at(u));
  if (stated) {
    const [low, high] = stated;
    // A single figure is as sure as a bucket of pond water that is read beside it: our default.
    const band = high > low ? stated : ([0.9 * low, 1.1 * low] as const);
    const at = low > 0 || high > low ? positive(spreadOver((band[0] + band[1]) / 2, band)) : () => 0;
    return { evaporation: (_t, u) => at(u), evaporationFrom: 'log' };
  }
  const rates = typeof evaporation === 'number' ? [evaporation] : evaporation;
  if (rates.every((rate) => rate === 0)) {
    const [low, value, high] = EVAPORATION_UNKNOWN;
    const at = positive(spreadOver(value, [low, high]));
    return { evaporation: (_t, u) => at(u), evaporationFrom: 'unknown' };
  }
  const factor = positive(spreadOver(1, [1 - EVAPORATION_OFF, 1 + EVAPORATION_OFF]));
  const rateAt = (t: number): number => (rates.length === 1 ? rates[0] : rates[monthAt(starts, t)]);
  return { evaporation: (t, u) => factor(u) * rateAt(t), evaporationFrom: 'site' };
}
