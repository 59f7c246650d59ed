/** Weather, supply, limits and what is done: the parts of a site that say how it is used. */
import { monthLength, parseTimeOfDay } from '../quantity/index.ts';
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

export function defaultHoses(file: SupplyFile['hose']): readonly Hose[] {
  if (file === undefined) return [];
  const hoses = Array.isArray(file) ? (file as Extract<SupplyFile['hose'], readonly unknown[]>) : [file as HoseFile];
  return hoses.map((hose) => ({
    name: hose.name ?? 'hose',
    flow: hose.flow,
    on: hose.on ?? false,
    meter: hose.meter,
  }));
}

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
