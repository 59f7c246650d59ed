import type { CheckState } from './mainLine.ts';

/** A leak as it stands: basin by number, elevation m, effective area m². */
export interface OpenLeak {
  readonly basin: number;
  readonly elevation: number;
  readonly area: number;
}

/** What the media hold: settled volume of each layer, m³, at a time and as foreseen from there, m³/s. */
export interface Settled {
  readonly since: number;
  readonly held: readonly number[];
  readonly perSecond: readonly number[];
}

/**
 * Everything that actions and weather may change between two restarts: plain data, replaced and never altered, so that
 * a record can keep what held in each stretch.
 */
export interface Settings {
  /** Pump speed ramps linearly from one speed to another between two times; −/s. */
  readonly ramp: { readonly from: number; readonly to: number; readonly start: number; readonly end: number };
  readonly bottomValve: number;
  readonly topValve: number;
  readonly check: CheckState;
  /** Open fraction of the intake, a stone or a stream, by name; 1 where not named. */
  readonly open: Readonly<Record<string, number>>;
  /** Hose water into the pond, m³/s. */
  readonly hose: number;
  readonly autofill: boolean;
  /** Depth rates, m/s. */
  readonly rain: number;
  readonly evaporation: number;
  /** Flow drawn out of the pond for good, m³/s. */
  readonly pumpOut: number;
  readonly leaks: readonly OpenLeak[];
  /** Empty where nothing clogs. */
  readonly settled: Settled;
  /** The pond is kept where it is (running balance, a start overnight). */
  readonly pondHeld: boolean;
}

/** Speed of the pump at a time, −. */
export function speedAt(ramp: Settings['ramp'], time: number): number {
  if (time >= ramp.end) return ramp.to;
  if (time <= ramp.start) return ramp.from;
  return ramp.from + ((ramp.to - ramp.from) * (time - ramp.start)) / (ramp.end - ramp.start);
}
