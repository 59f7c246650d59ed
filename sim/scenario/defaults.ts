/** From a file without problems to the checked site: every default filled in, what was assumed noted. */
import { type Assumptions, assumptions, BANDS } from './assume.ts';
import { defaultFilter } from './defaults-filter.ts';
import { defaultPlumbing } from './defaults-plumbing.ts';
import { defaultActions, defaultAutofill, defaultHoses, defaultLimits, defaultWeather } from './defaults-use.ts';
import { basinParts, defaultCrest, defaultElement } from './defaults-watercourse.ts';
import type { Pond, Pump, Scenario } from './scenario.ts';
import type { SiteFile } from './schema.ts';
import { shapeBasin } from './shapes.ts';

export const DEFAULT_STARTS = '2031-01-01T00:00';
const WATER_TEMPERATURE = 15;

export function fillDefaults(file: SiteFile): Scenario {
  const assume = assumptions();
  const starts = file.starts ?? DEFAULT_STARTS;
  const pond = defaultPond(file.pond, assume);
  const pump = defaultPump(file.pump, assume);
  const watercourse = (file.watercourse ?? []).map((element, i) =>
    defaultElement(element, `watercourse[${i}]`, assume),
  );
  const debris = file.debris ?? 0;
  const filter = file.filter && defaultFilter(file.filter, debris, assume);
  // Where no filter stands the feeds end in the first part of the watercourse, or in the pond.
  const feedsEndIn = filter ? 'filter' : (watercourse[0]?.name ?? 'pond');
  const temperature = assume.or(file.water?.temperature, 'water.temperature', WATER_TEMPERATURE);
  return {
    title: file.title ?? 'Untitled site',
    notes: file.notes ?? '',
    display: file.display ?? 'metric',
    starts,
    water: { temperature },
    span: file.span,
    start: file.start ?? (pump.running && pond.level !== 'empty' ? 'running' : 'standing'),
    pond,
    intake: { ...file.intake, blockage: file.intake.blockage ?? 0 },
    vault: basinParts(file.vault),
    pump,
    plumbing: defaultPlumbing(file.plumbing, feedsEndIn, assume),
    filter,
    watercourse,
    debris,
    load: file.load ?? 0,
    concentration: file.concentration ?? 0,
    weather: defaultWeather(file.weather, starts),
    hoses: defaultHoses(file.supply?.hose, temperature, assume),
    autofill: defaultAutofill(file.supply?.autofill),
    limits: defaultLimits(file.limits),
    actions: defaultActions(file.actions ?? []),
    assumed: assume.all,
  };
}

function defaultPond(file: SiteFile['pond'], assume: Assumptions): Pond {
  const shaped = file.shape && shapeBasin(file.shape);
  if (file.shape?.plan === 'freeform') assume.note('pond.shape.plan', 0.82, BANDS.freeform);
  const given = typeof file.level === 'number' ? file.level : undefined;
  if (file.fillMark === undefined && given !== undefined) assume.note('pond.fillMark', given);
  return {
    ...basinParts({ ...file, profile: shaped?.profile ?? file.profile ?? [] }),
    displaced: [...(shaped?.displaced ?? []), ...(file.displaced ?? [])],
    level: file.level,
    fillMark: file.fillMark ?? given,
    rim: defaultCrest(file.rim, 'pond.rim', 1, assume),
    overflow: file.overflow,
    plantCover: file.plantCover ?? 0,
    runoff: file.runoff ?? { area: 0, coefficient: 0 },
    boxVolume: shaped?.boxVolume,
  };
}

function defaultPump(file: SiteFile['pump'], assume: Assumptions): Pump {
  if ('flow' in file.curve) assume.note('pump.curve', 1, BANDS.box);
  if (file.standingLoss === undefined) assume.note('pump.standingLoss', 'from the curve');
  return {
    curve: 'flow' in file.curve ? { kind: 'box', ...file.curve } : { kind: 'points', points: file.curve },
    power: wirePower(file),
    suction: file.suction,
    minimum: file.minimum,
    standingLoss: file.standingLoss,
    running: file.running ?? true,
    speed: file.speed ?? 1,
    cutOut: file.cutOut,
  };
}

function wirePower({ power, efficiency }: SiteFile['pump']): Pump['power'] {
  if (efficiency !== undefined) return { kind: 'efficiency', efficiency };
  if (power === undefined) return undefined;
  return typeof power === 'number' ? { kind: 'constant', watts: power } : { kind: 'points', points: power };
}
