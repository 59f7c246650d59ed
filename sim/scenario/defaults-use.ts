/** Weather, supply, limits and what is done: the parts of a site that say how it is used. */
import { hoseFlow } from '../laws/hose.ts';
import { density, kinematicViscosity } from '../laws/water.ts';
import { monthLength, parseTimeOfDay } from '../quantity/index.ts';
import type { Assumptions } from './assume.ts';
import type { Action, Autofill, Deed, Hose, Limits, Timing, Weather } from './scenario.ts';
import type { SiteFile } from './schema.ts';

type SupplyFile = NonNullable<SiteFile['supply']>;
type ActionFile = NonNullable<SiteFile['actions']>[number];
type TimedFile = Exclude<ActionFile, { daily: unknown }>;

/** Where one figure is given for headroom, this much is asked for a pass at the least, m. */
const HEADROOM_PASS = 0.025;

/** A month's depth of rain becomes a rate over that month's own length in the year of `starts`. */
export function defaultWeather(file: SiteFile['weather'], starts: string): Weather {
  const year = Number(starts.slice(0, 4));
  return {
    evaporation: file?.evaporation ?? 0,
    rain: file?.rain?.map((depth, month) => depth / monthLength(year, month)),
  };
}

/** What a pressure read with the tap shut may promise too much, as a share of the flow. Our estimate. */
const PROMISED = 0.4;

/**
 * Hoses with their flows: measured, or reckoned from the pressure at the tap, which is noted.
 *
 * @param celsius temperature of the water
 */
export function defaultHoses(file: SupplyFile['hose'], celsius: number, assume: Assumptions): readonly Hose[] {
  if (file === undefined) return [];
  const isMany = Array.isArray(file);
  const hoses = isMany ? (file as Extract<SupplyFile['hose'], readonly unknown[]>) : [file as HoseFile];
  return hoses.map((hose, i) => {
    const common = { name: hose.name ?? 'hose', on: hose.on ?? false, meter: hose.meter, volume: hose.volume };
    if (hose.flow !== undefined) return { ...common, flow: hose.flow };
    const { pressure = 0, length = 0, bore = 0, rise = 0, k = JET } = hose;
    const flow = hoseFlow({ pressure, length, bore, rise, k }, density(celsius), kinematicViscosity(celsius));
    assume.note(isMany ? `supply.hose[${i}].flow` : 'supply.hose.flow', flow, [(1 - PROMISED) * flow, flow]);
    return { ...common, flow, by: 'pressure' };
  });
}

/** The velocity head with which a jet leaves. */
const JET = 1;

type HoseFile = Exclude<NonNullable<SupplyFile['hose']>, readonly unknown[]>;

export function defaultAutofill(file: SupplyFile['autofill']): Autofill | undefined {
  return file && { ...file, in: file.in ?? 'pond' };
}

export function defaultLimits(file: SiteFile['limits']): Limits {
  const { headroom, ...others } = file ?? {};
  if (headroom === undefined) return others;
  return {
    ...others,
    headroom: typeof headroom === 'number' ? [headroom, Math.max(headroom, HEADROOM_PASS)] : headroom,
  };
}

export function defaultActions(files: readonly ActionFile[]): readonly Action[] {
  return files.map((file, i) => {
    const place = `actions[${i}]`;
    if ('daily' in file)
      return { daily: file.daily.map((each) => parseTimeOfDay(each) ?? 0), deed: { do: 'pump' }, place };
    return { timing: timingOf(file), deed: deedOf(file), place };
  });
}

function timingOf({ at, when }: TimedFile): Timing {
  if (!when) return { at: at ?? 0 };
  const crossing = when.rises !== undefined ? 'rises' : 'falls';
  return { when: { basin: when.basin, crossing, level: when.rises ?? when.falls ?? 0 } };
}

function deedOf(file: TimedFile): Deed {
  switch (file.do) {
    case 'power':
      return { do: 'power', to: file.to, for: file.for };
    case 'hose':
      return { do: 'hose', to: file.to, name: file.name };
    case 'storm':
      return { do: 'storm', depth: file.depth, lasting: file.lasting, shape: file.shape ?? 'even' };
    default: {
      const { at: _at, when: _when, ...deed } = file;
      return deed;
    }
  }
}
