import { curveFromBox, curveFromPoints } from '../laws/pump.ts';
import { formatFlow, formatLength } from '../quantity/index.ts';
import { lowestOf } from '../results/checks/variants.ts';
import type { Crest, Scenario } from '../scenario/scenario.ts';
import { observationOf, type SiteReading, whatWords } from './reading.ts';

/** A reading that cannot be. */
export interface ReadingProblem {
  /** Which of the readings; −1: all of them. */
  readonly reading: number;
  readonly says: string;
}

/** A crest that a ruler is held on, and the edge over which its water would run first. */
export interface Ruled {
  readonly crest: Crest;
  readonly edge: Crest;
  readonly of: string;
}

/** The crest of a name, 'lip' or a stone's. */
export function ruledCrest(s: Scenario, name: string): Ruled | undefined {
  if (name === 'lip' && s.filter) return { crest: s.filter.lip, edge: s.filter.rim, of: 'the filter' };
  for (const reach of s.watercourse) {
    if (reach.kind !== 'pool') continue;
    const crest = reach.stones.find((stone) => stone.name === name);
    if (crest) return { crest, edge: reach.rim, of: `‘${reach.name}’` };
  }
  return undefined;
}

/** A pump that gives this much more than its curve's end is another pump. */
const BEYOND_CURVE = 1.3;

/** What is impossible in readings, each in words for who took it. */
export function tellReadings(s: Scenario, readings: readonly SiteReading[]): ReadingProblem[] {
  if (readings.length === 0)
    return [{ reading: -1, says: 'Give at least one reading: the water over the main stone is a good first one.' }];
  return readings.flatMap((reading, i) => {
    const says = tellFigures(s, reading) ?? tellSense(s, reading);
    return says === undefined ? [] : [{ reading: i, says }];
  });
}

const isFigure = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

function figuresOf(reading: SiteReading): [what: string, value: unknown][] {
  if (reading.kind === 'head') return [[whatWords(`head ${reading.over}`), reading.head]];
  if (reading.kind === 'fall') return [[whatWords('fall'), reading.fall]];
  return [
    ['what the bucket holds', reading.volume],
    ['the seconds to fill the bucket', reading.seconds],
  ];
}

function tellFigures(s: Scenario, reading: SiteReading): string | undefined {
  const example = reading.kind === 'bucket' ? '10 L in 8 s' : formatLength(0.025, s.display);
  for (const [what, value] of figuresOf(reading)) {
    const start = what.charAt(0).toUpperCase() + what.slice(1);
    if (!isFigure(value)) return `${start} is no figure (‘${String(value)}’): give it as ${example}.`;
    if (value < 0) return `${start} can’t be less than nothing: give it as ${example}.`;
    if (value === 0) return `${start} is nothing, which tells nothing: leave it out, or give it as ${example}.`;
  }
  const errors = [reading.error, reading.kind === 'bucket' ? reading.volumeError : undefined];
  return errors.some((error) => error !== undefined && !(isFigure(error) && error > 0))
    ? 'How far a reading may be off must be more than nothing: no ruler reads exactly.'
    : undefined;
}

function tellSense(s: Scenario, reading: SiteReading): string | undefined {
  if (reading.kind === 'head') return tellHead(s, reading.over, reading.head);
  return reading.kind === 'fall' ? tellFall(s, reading.fall) : tellBucket(s, observationOf(reading).value);
}

/** Why so much water cannot stand over a crest. */
export function tellHead(s: Scenario, over: string, head: number): string | undefined {
  const ruled = ruledCrest(s, over);
  if (!ruled) return over === 'lip' ? 'This site has no filter, and so no lip.' : `No stone here is called ‘${over}’.`;
  const room = lowestOf(ruled.edge.crest) - lowestOf(ruled.crest.crest);
  if (head <= room) return undefined;
  const length = (m: number): string => formatLength(m, s.display);
  const what = whatWords(`head ${over}`);
  return (
    `With ${length(head)} as ${what} it would stand ${length(head - room)} above the edge of ${ruled.of} and run ` +
    `over it: there is room for ${length(room)}. Read from the lowest point of the crest straight up to the water.`
  );
}

function tellFall(s: Scenario, fall: number): string | undefined {
  const { fillMark, profile } = s.pond;
  if (fillMark === undefined) return 'The site has no fill mark to fall from: give the pond one first.';
  const depth = fillMark - profile[0][0];
  const length = (m: number): string => formatLength(m, s.display);
  if (fall < depth) return undefined;
  return `The pond can’t fall ${length(fall)}: from its fill mark to its floor it is ${length(depth)}.`;
}

function tellBucket(s: Scenario, flow: number): string | undefined {
  const { topFeed } = s.plumbing;
  if (!topFeed) return 'This site has no top feed to fill a bucket from.';
  if (topFeed.valve === 0) return 'The top feed’s valve is shut in this site, so it fills no bucket: open it first.';
  const { curve, speed } = s.pump;
  const atFull = curve.kind === 'box' ? curveFromBox(curve.flow, curve.head) : curveFromPoints(curve.points);
  const freeFlow = speed * atFull.freeFlow;
  if (flow <= BEYOND_CURVE * freeFlow) return undefined;
  return (
    `That bucket makes ${formatFlow(flow, s.display)}, more than the pump gives at no height at all ` +
    `(${formatFlow(freeFlow, s.display)}): check the bucket’s size and the seconds.`
  );
}
