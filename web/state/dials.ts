/** The few dials that decide each question: what they set in the file, over which range, and how they stand. */
import { type DimensionName, type Display, formatFlow, formatLevel, formatPercent } from '../../sim/quantity/index.ts';
import type { Pool, Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { dimensionOf, placeOf, type Setting, settingIn } from '../../sim/studies/setting.ts';
import type { Subject } from '../engine/protocol.ts';
import { shownAs, stepOf } from './typed.ts';

export interface Ruler {
  readonly kind: 'ruler';
  readonly name: string;
  readonly setting: Setting;
  /** SI. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** What the field shows: as it was typed. */
  readonly text: string;
  readonly note: string;
}

export interface Choice {
  readonly kind: 'choice';
  readonly name: string;
  readonly options: readonly {
    readonly word: string;
    readonly chosen: boolean;
    /** Places of the file and what is put there. */
    readonly edits: readonly (readonly [place: string, value: unknown])[];
  }[];
}

export type Dial = Ruler | Choice;

/** Stones that get a dial of their own: more would crowd out what decides. */
const STONES = 2;

/** The site on the screen, the site as it was opened, and the file as it is being edited. */
export interface Dialed {
  readonly now: Scenario;
  readonly base: Scenario;
  readonly file: unknown;
}

export function dialsFor(about: Subject, site: Dialed): Dial[] {
  const dials: Record<Subject, () => (Dial | undefined)[]> = {
    stop: () => [fillMark(site), edge(site), checkValve(site), ...stones(site), float(site)],
    filling: () => [hose(site), waterNow(site), fillMark(site), hoseOn(site), float(site)],
    filter: () => [valve(site, 'bottomFeed'), valve(site, 'topFeed'), gap(site), pump(site)],
  };
  return dials[about]().filter((dial) => dial !== undefined);
}

const lowest = (crest: readonly (readonly [number, number])[]): number => Math.min(...crest.map(([, z]) => z));

type Span = readonly [low: number, high: number];

/** A ruler over a span, widened to take in how its setting stands. */
function ruler(
  site: Dialed,
  name: string,
  setting: Setting,
  [low, high]: Span,
  given?: number,
  note = '',
): Ruler | undefined {
  const { file, now } = site;
  const value = settingIn(file, setting) ?? given;
  if (value === undefined) return undefined;
  const place = placeOf(file, setting);
  const raw = place === undefined ? undefined : valueAt(file, place);
  const dimension = dimensionOf(setting);
  return {
    kind: 'ruler',
    name,
    setting,
    value,
    low: Math.min(low, value),
    high: Math.max(high, value),
    step: stepOf(raw, dimension, now.display),
    text: raw === undefined ? wordsOf(value, dimension, now.display) : shownAs(raw, dimension),
    note,
  };
}

/** A figure in the display's units, as a dial tells it. */
export function wordsOf(value: number, dimension: DimensionName, display: Display): string {
  if (dimension === 'flow') return formatFlow(value, display);
  if (dimension === 'length') return formatLevel(value, display);
  return formatPercent(value);
}

const figure = (place: string, dimension: DimensionName): Setting => ({ kind: 'figure', place, dimension });

function fillMark(site: Dialed): Ruler | undefined {
  const { pond } = site.base;
  const rim = lowest(pond.rim.crest);
  return ruler(site, 'fill mark', figure('pond.fillMark', 'length'), [rim - 0.25, rim], site.now.pond.fillMark);
}

function edge(site: Dialed): Ruler | undefined {
  const rim = lowest(site.base.pond.rim.crest);
  return ruler(site, 'liner edge', { kind: 'crest', place: 'pond.rim.crest' }, [rim - 0.1, rim + 0.1]);
}

/** The stones down which the water comes home: the last pool's, the main one first. */
function stones(site: Dialed): (Ruler | undefined)[] {
  const { watercourse } = site.base;
  const last = watercourse.findLastIndex(({ kind }) => kind === 'pool');
  if (last < 0) return [];
  const pool = watercourse[last] as Pool;
  const order = pool.stones
    .map((stone, i) => ({ stone, i }))
    .sort((a, b) => Number(b.stone.main) - Number(a.stone.main));
  return order.slice(0, STONES).map(({ stone, i }) => {
    const crest = lowest(stone.crest);
    const place = `watercourse[${last}].stones[${i}].crest`;
    return ruler(site, stone.name, { kind: 'crest', place }, [crest - 0.05, crest + 0.05]);
  });
}

function float(site: Dialed): Ruler | undefined {
  const { autofill, pond } = site.base;
  if (!autofill) return undefined;
  const rim = lowest(pond.rim.crest);
  return ruler(site, 'autofill shuts at', { kind: 'float', place: 'supply.autofill' }, [rim - 0.25, rim]);
}

function checkValve({ now, file }: Dialed): Choice {
  const { kind } = now.plumbing.main.checkValve;
  const place = 'plumbing.main.checkValve';
  const has = valueAt(file, place);
  const sound = has === undefined ? kind === 'sound' : has === true;
  return {
    kind: 'choice',
    name: 'check valve',
    options: [
      { word: 'sound', chosen: sound, edits: [[place, true]] },
      { word: 'none', chosen: has === false || (has === undefined && kind === 'none'), edits: [[place, false]] },
    ],
  };
}

/** A handle stands in line with its pipe where the valve is open, across it where it is shut. */
const handleWords = (opening: number): string => `handle ${Math.round(90 * (1 - opening))}° from the pipe`;

function valve(site: Dialed, feed: 'bottomFeed' | 'topFeed'): Ruler | undefined {
  const there = site.now.plumbing[feed];
  if (!there) return undefined;
  const name = feed === 'bottomFeed' ? 'bottom feed’s valve' : 'top feed’s valve';
  const setting = figure(`plumbing.${feed}.valve`, 'fraction');
  return ruler(site, name, setting, [0, 1], there.valve, handleWords(settingIn(site.file, setting) ?? there.valve));
}

function gap(site: Dialed): Ruler | undefined {
  const media = site.now.filter?.media;
  return media && ruler(site, 'gap round the mats', figure('filter.media.gap', 'length'), [0, 0.03], media.gap);
}

/** A pump that is off at the start needs a start at rest; one that is on starts in its balance. */
function pump({ now }: Dialed): Choice {
  return {
    kind: 'choice',
    name: 'pump at the start',
    options: [
      {
        word: 'on',
        chosen: now.pump.running,
        edits: [
          ['pump.running', undefined],
          ['start', undefined],
        ],
      },
      {
        word: 'off',
        chosen: !now.pump.running,
        edits: [
          ['pump.running', false],
          ['start', 'overnight'],
        ],
      },
    ],
  };
}

const firstHose = (file: unknown): string =>
  Array.isArray(valueAt(file, 'supply.hose')) ? 'supply.hose[0]' : 'supply.hose';

function hose(site: Dialed): Ruler | undefined {
  const [first] = site.base.hoses;
  if (!first) return undefined;
  return ruler(site, 'hose, by a bucket test', figure(`${firstHose(site.file)}.flow`, 'flow'), [
    0,
    Math.max(2 * first.flow, 1e-4),
  ]);
}

function hoseOn({ now, file }: Dialed): Choice | undefined {
  const [first] = now.hoses;
  if (!first) return undefined;
  const place = `${firstHose(file)}.on`;
  return {
    kind: 'choice',
    name: 'hose at the start',
    options: [
      { word: 'open', chosen: first.on, edits: [[place, true]] },
      { word: 'shut', chosen: !first.on, edits: [[place, undefined]] },
    ],
  };
}

function waterNow(site: Dialed): Ruler | undefined {
  const { pond } = site.base;
  const floor = pond.profile[0][0];
  const level = site.now.pond.level === 'empty' ? floor : site.now.pond.level;
  return ruler(site, 'water stands now at', figure('pond.level', 'length'), [floor, lowest(pond.rim.crest)], level);
}
