import { formatLength } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { covarianceOf, deviation, type Estimate } from './leastSquares.ts';
import { NINETY } from './prior.ts';
import { couldRead, RULER, whatWords } from './reading.ts';
import type { Unknown } from './unknowns.ts';

/** Something about which the readings say next to nothing. */
export interface CannotTell {
  /** A place of the file, or one of the flows: `main`, `top feed`. */
  readonly place: string;
  /** Width of its band over what it was before. */
  readonly left: number;
  /** What to read to tell it, `head NAME`, `fall` or `top feed`; several: only together; none: not by readings as coarse. */
  readonly by: readonly string[];
  readonly says: string;
}

/** A band that keeps this share of its width has told nothing: our choice. */
export const HARDLY = 0.8;
/** A finer reading: a tenth as coarse, as by a point gauge in a stilling tube. Common practice, no source. */
const FINER = 10;

/** Something that is asked, by its slopes over the unknowns. */
interface Question {
  readonly place: string;
  readonly words: string;
  readonly slopes: readonly number[];
}

type Slopes = Readonly<Record<string, readonly number[]>>;

/** What is asked of readings: the real flow, the top feed's, and each named unknown. */
export function questionsOf(s: Scenario, unknowns: readonly Unknown[], slopes: Slopes): Question[] {
  const both = s.plumbing.bottomFeed && s.plumbing.topFeed;
  const flows = [
    { place: 'main', words: 'the real flow', slopes: slopes.main },
    ...(both ? [{ place: 'top feed', words: 'how much goes by the top feed', slopes: slopes['top feed'] }] : []),
  ];
  const named = unknowns.map(({ place, words, kind }, k) => ({
    place,
    words,
    kind,
    slopes: unknowns.map((_, i) => (i === k ? 1 : 0)),
  }));
  return [...flows, ...named.filter(({ kind }) => kind !== 'other')];
}

/** What may still be read: what was not, all that can be, what the site shows of it and its slopes. */
export interface Candidates {
  readonly left: readonly string[];
  readonly all: readonly string[];
  readonly shown: Readonly<Record<string, number>>;
  readonly slopes: Slopes;
}

/**
 * The questions whose band is hardly narrower than before the readings, each with the reading that narrows it most.
 *
 * A reading not yet taken is weighed by its default error: its slopes alone say how much it would tell, whatever it shows
 * (Atkinson & Donev 1992, Optimum Experimental Designs, ch. 5).
 */
export function cannotTell(questions: readonly Question[], estimate: Estimate, candidates: Candidates): CannotTell[] {
  const row = (what: string, finer = 1): number[] => {
    const { error } = couldRead(what, candidates.shown[what]);
    return candidates.slopes[what].map((slope) => (slope * NINETY * finer) / error);
  };
  const rows = new Map(candidates.left.map((what) => [what, row(what)]));
  const fine = candidates.all.map((what) => row(what, FINER));
  return questions.flatMap(({ place, words, slopes }) => {
    const before = Math.hypot(...slopes);
    const left = (more: readonly (readonly number[])[]): number =>
      deviation(slopes, covarianceOf([...estimate.slopes, ...more], estimate.u.length)) / before;
    const now = left([]);
    if (!(now > HARDLY)) return [];
    const by = telling(rows, left);
    return [{ place, left: now, by, says: saysOf(words, by, left(fine) <= HARDLY) }];
  });
}

type Left = (more: readonly (readonly number[])[]) => number;

/** The one reading that tells it; else all further ones without those that do not matter; else none. */
function telling(rows: ReadonlyMap<string, number[]>, left: Left): string[] {
  const with_ = (names: readonly string[]): number => left(names.map((name) => rows.get(name) ?? []));
  const names = [...rows.keys()];
  const [best] = names.map((name) => ({ name, left: with_([name]) })).sort((a, b) => a.left - b.left);
  if (best === undefined) return [];
  if (best.left <= HARDLY) return [best.name];
  if (with_(names) > HARDLY) return [];
  return names.reduce((kept, name) => {
    const fewer = kept.filter((each) => each !== name);
    return with_(fewer) <= HARDLY ? fewer : kept;
  }, names);
}

function saysOf(words: string, by: readonly string[], finerTells: boolean): string {
  const start = `The readings can’t tell ${words}`;
  if (by.length > 0) return `${start}: ${by.map(whatWords).join(' together with ')} would.`;
  const fine = `${formatLength(RULER / FINER, 'metric')}`;
  return finerTells
    ? `${start}: only much finer ones would, to ± ${fine}, as by a point gauge in still water.`
    : `${start}, and no finer reading of this kind would.`;
}
