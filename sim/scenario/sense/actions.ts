import type { Tell } from '../fields.ts';
import type { PartlyFile } from '../schema.ts';
import { basinsOf, elementsOf, isPool, isStream, namesAreKnown, pondProfile } from './basins.ts';
import { type Elevations, floorOfProfile } from './order.ts';

type ActionRead = NonNullable<NonNullable<PartlyFile['actions']>[number]>;
type TimedRead = Exclude<ActionRead, { daily?: unknown }>;

interface Known {
  /** Floors of the basins by name. */
  readonly basins: ReadonlyMap<string, number | undefined>;
  /** What leaves or a dam can block. */
  readonly blockable: readonly string[];
  readonly hoses: readonly string[];
  /** Whether every name could be read, so that a name beside them is unknown. */
  readonly whole: boolean;
}

/** Actions within the span, on parts that the site has. */
export function tellActions(file: PartlyFile, tell: Tell, check: Elevations): void {
  const known: Known = {
    basins: new Map(basinsOf(file).map(({ name, floor }) => [name, floor])),
    blockable: ['intake', ...blockableParts(file)],
    hoses: hoseNames(file),
    whole: namesAreKnown(file),
  };
  file.actions?.forEach((action, i) => {
    const place = `actions[${i}]`;
    if (!action) return;
    if ('daily' in action) tellDaily(action.daily as readonly string[] | undefined, place, tell);
    else tellTimed(action as TimedRead, place, file, known, tell, check);
  });
}

function blockableParts(file: PartlyFile): string[] {
  return elementsOf(file).flatMap(([element]) => {
    if (isStream(element)) return element.name ?? [];
    return isPool(element) ? (element.stones ?? []).flatMap((stone) => stone?.name ?? []) : [];
  });
}

function hoseNames({ supply }: PartlyFile): string[] {
  const hose = supply?.hose as { name?: string } | readonly ({ name?: string } | undefined)[] | undefined;
  if (hose === undefined) return [];
  return (Array.isArray(hose) ? hose : [hose]).map((each) => each?.name ?? 'hose');
}

function tellDaily(times: readonly string[] | undefined, place: string, tell: Tell): void {
  times?.forEach((time, i) => {
    if (times.indexOf(time) < i) tell(`${place}.daily[${i}]`, `${time} a second time`, 'each clock time once');
  });
}

function tellTimed(
  action: TimedRead,
  place: string,
  file: PartlyFile,
  known: Known,
  tell: Tell,
  check: Elevations,
): void {
  if (action.at !== undefined && file.span !== undefined && action.at > file.span) {
    tell(`${place}.at`, `${action.at} s`, `a time within the span (${file.span} s)`);
  }
  if (known.whole) tellName(action.when?.basin, [...known.basins.keys()], `${place}.when.basin`, tell);
  if (known.whole) tellNames(action, place, known, tell);
  if (action.do === 'leak' && action.in !== undefined) {
    check(
      `${place}.elevation`,
      action.elevation,
      'not below',
      known.basins.get(action.in),
      `the floor of the ${action.in}`,
    );
  }
  if (action.do === 'pump out') {
    check(`${place}.until`, action.until, 'not below', floorOfProfile(pondProfile(file.pond)), 'the pond’s floor');
  }
  if (action.do === 'power' && action.to === 'on' && action.for !== undefined) {
    tell(`${place}.for`, 'a time with "to": "on"', 'it with "to": "off" alone');
  }
  const missing = missingPart(action.do, file);
  if (missing !== undefined) tell(`${place}.do`, JSON.stringify(action.do), missing);
}

function tellNames(action: TimedRead, place: string, known: Known, tell: Tell): void {
  if (action.do === 'hose') {
    if (known.hoses.length > 0) tellName(action.name, known.hoses, `${place}.name`, tell);
  } else if (action.do === 'blockage') tellName(action.of, known.blockable, `${place}.of`, tell);
  else if (action.do === 'leak') tellName(action.in, [...known.basins.keys()], `${place}.in`, tell);
}

function tellName(name: string | undefined, known: readonly string[], place: string, tell: Tell): void {
  if (name !== undefined && !known.includes(name)) tell(place, JSON.stringify(name), `one of ${known.join(', ')}`);
}

/** What the site would need for a deed to be done on it. */
function missingPart(deed: TimedRead['do'], file: PartlyFile): string | undefined {
  const { supply, plumbing, filter } = file;
  if (deed === 'hose' && supply?.hose === undefined) return 'a hose in "supply" to turn';
  if (deed === 'autofill' && supply?.autofill === undefined) return 'an autofill in "supply" to shut';
  if (deed === 'bottom valve' && plumbing && !plumbing.bottomFeed) return 'a bottom feed in "plumbing"';
  if (deed === 'top valve' && plumbing && !plumbing.topFeed) return 'a top feed in "plumbing"';
  if (deed === 'clean filter' && !filter) return 'a filter to clean';
  return undefined;
}
