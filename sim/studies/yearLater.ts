/** What a year does to a site that nobody looks after, as changes to its file. */
import { type DimensionName, type Display, formatLength, fromSI, parseQuantity, unitOf } from '../quantity/index.ts';
import { readScenario } from '../scenario/read.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { expandSketch, holdsSketch } from '../sketch/expand.ts';
import { valueAt, withValuesAt } from './place.ts';

/** All our default; what fill settles in a year lies between 5 and 25 mm, always down (common practice, no source). */
export const YEAR = {
  /** The edge sinks with the fill it lies on, m. */
  settled: 0.025,
  /** The filter's box leans by so much over its lip, m. */
  leaning: 0.01,
  /** Share of the intake's screen under leaves. */
  blocked: 0.5,
  /** The pump gives what it would at this share of its speed. */
  worn: 0.9,
} as const;

/** The least speed a file takes. */
const SLOWEST = 0.1;

type Edits = readonly (readonly [place: string, value: unknown])[];

export interface YearLater {
  /** Places of the file as it was typed, and what is put there. */
  readonly edits: Edits;
  /** What has changed, and what could not, each as a part of a sentence. */
  readonly done: readonly string[];
  readonly left: readonly string[];
}

interface Change {
  readonly words: string;
  /** Changes to the expanded file. */
  readonly edits: (file: unknown) => Edits;
}

/**
 * A site a year later. A change that the file would not stand (an edge that sinks under the fill mark) is left out and
 * told. What a sketch would lay out anew for the lower edge stays as it was built.
 * @param file a site's file without problems
 * @param display units of the words; left out: the file's own
 */
export function yearLater(file: unknown, display?: Display): YearLater {
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) return { edits: [], done: [], left: [] };
  const done: string[] = [];
  const left: string[] = [];
  let edits: Edits = [];
  for (const change of changesOf(reading.scenario, display ?? reading.scenario.display)) {
    const next = [...edits, ...change.edits(plain(withValuesAt(plain(file), edits)))];
    if (readScenario(JSON.stringify(withValuesAt(plain(file), next))).ok) {
      edits = next;
      done.push(change.words);
    } else left.push(change.words);
  }
  return { edits: asBuilt(file, edits), done, left };
}

const plain = (file: unknown): unknown => (holdsSketch(file) ? expandSketch(file, { listed: false }).file : file);

function changesOf(s: Scenario, display: Display): Change[] {
  const length = (value: number): string => formatLength(value, display);
  const changes: Change[] = [
    {
      words: `the edge ${length(YEAR.settled)} lower, where it lies on fill`,
      edits: (file) => crestEdits(file, 'pond.rim.crest', () => -YEAR.settled),
    },
  ];
  if (s.filter)
    changes.push({
      words: `the filter’s box out of level by ${length(YEAR.leaning)}`,
      edits: (file) => ['filter.lip.crest', 'filter.rim.crest'].flatMap((place) => crestEdits(file, place, leaning)),
    });
  if (s.intake.blockage < YEAR.blocked)
    changes.push({ words: 'the screen half blocked', edits: () => [['intake.blockage', YEAR.blocked]] });
  if (s.pump.speed > SLOWEST) changes.push({ words: 'the pump a tenth slower', edits: speedEdits });
  return changes;
}

/** One end of a crest goes down by half of what it leans, the other up. */
const leaning = (share: number): number => YEAR.leaning * (share - 0.5);

/** A crest whose points move by a height, m, according to how far along it they lie, 0..1. */
function crestEdits(file: unknown, place: string, by: (share: number) => number): Edits {
  const points = valueAt(file, place);
  if (!Array.isArray(points)) return [];
  const stations = points.map((point) => figure(point[0], 'length'));
  const [first, last] = [stations[0], stations[stations.length - 1]];
  const moved = points.map(([station, z], i) => [
    station,
    changed(z, 'length', (height) => height + by((stations[i] - first) / (last - first || 1))),
  ]);
  return [[place, moved]];
}

/** What a worn pump gives is read off its own curve at a lower speed, whoever drives it: the file, or an action of the day. */
function speedEdits(file: unknown): Edits {
  const worn = (speed: number): number => YEAR.worn * speed;
  const actions = valueAt(file, 'actions');
  const driven = (Array.isArray(actions) ? actions : []).flatMap((action, i) =>
    valueAt(action, 'do') === 'pump' && isSpeed(valueAt(action, 'to')) ? [`actions[${i}].to`] : [],
  );
  return [
    ['pump.speed', changed(valueAt(file, 'pump.speed') ?? 1, 'fraction', (speed) => Math.max(SLOWEST, worn(speed)))],
    ...driven.map((place) => [place, changed(valueAt(file, place), 'number', worn)] as const),
  ];
}

/** 'on' is the file's own speed, 'off' is none. */
const isSpeed = (to: unknown): boolean => to !== undefined && to !== 'on' && to !== 'off';

function figure(value: unknown, dimension: DimensionName): number {
  if (typeof value === 'number') return value;
  const parsed = parseQuantity(String(value), dimension);
  return parsed.ok ? parsed.value : 0;
}

/** Figures are written to so many digits: far finer than any ruler. */
const DIGITS = 6;

/** A figure of a file changed, in the unit it is written in. */
function changed(value: unknown, dimension: DimensionName, by: (figure: number) => number): unknown {
  const now = by(figure(value, dimension));
  if (typeof value !== 'string') return Number(now.toPrecision(DIGITS));
  const parsed = parseQuantity(value, dimension);
  const name = parsed.ok ? parsed.units[parsed.units.length - 1] : undefined;
  const unit = name === undefined ? undefined : unitOf(dimension, name);
  return unit ? `${Number(fromSI(now, unit).toPrecision(DIGITS))} ${name}` : Number(now.toPrecision(DIGITS));
}

/** Changes to a sketch's file: parts that it would lay out anew for them stand beside it as they were built. */
function asBuilt(file: unknown, edits: Edits): Edits {
  if (!holdsSketch(file)) return edits;
  const built = withValuesAt(plain(file), edits) as Readonly<Record<string, unknown>>;
  const anew = plain(withValuesAt(file, edits)) as Readonly<Record<string, unknown>>;
  const parts = Object.keys(built).filter((part) => JSON.stringify(built[part]) !== JSON.stringify(anew[part]));
  return [...edits, ...parts.map((part) => [part, built[part]] as const)];
}
