import { formatLength, formatLevel } from '../../sim/quantity/format.ts';
import type { Crest, Scenario, Stone } from '../../sim/scenario/scenario.ts';
import { elevationFigure } from '../section/labels/figures.ts';
import { type Benchmark, type Block, lowestOf, type SheetFacts } from './block.ts';

/** Crests out of level by less are level, m. */
const LEVEL = 5e-4;

/** A height to be set out, m above the datum, and the water that stands over it in the running site, m. */
export interface Height {
  readonly name: string;
  readonly elevation: number;
  readonly water?: number | undefined;
}

/** Every height of a site the crew sets out, the highest first; a crest stands by its lowest point. */
export function heightsOf({ scenario: s, balance }: SheetFacts): Height[] {
  const { pond, filter, plumbing, intake } = s;
  const crest = (name: string, { crest }: Crest, water?: number): Height => ({
    name: `${name}${crestWords(crest, s)}`,
    elevation: lowestOf(crest),
    water,
  });
  const point = (name: string, elevation: number | undefined): Height[] =>
    elevation === undefined ? [] : [{ name, elevation }];
  const stones = s.watercourse.flatMap((reach) =>
    reach.kind === 'pool'
      ? reach.stones.map((stone) => crest(mainName(stone), stone, balance?.stones[stone.name]?.head))
      : [],
  );
  const lipWater = balance && filter ? Math.max(0, balance.levels['filter'] - lowestOf(filter.lip.crest)) : undefined;
  return [
    crest('liner’s edge', pond.rim),
    ...point('fill mark', pond.fillMark),
    ...(pond.overflow ? point(overflowName(s), pond.overflow.elevation) : []),
    ...(filter ? [crest('filter’s lip', filter.lip, lipWater)] : []),
    ...stones,
    ...point('tee', plumbing.tee),
    ...point('intake’s lip', intake.elevation),
  ].sort((a, b) => b.elevation - a.elevation);
}

const mainName = ({ name, main }: Stone): string => (main && !/\bmain\b/i.test(name) ? `${name} (main)` : name);

const overflowName = ({ pond, display }: Scenario): string =>
  `overflow’s mouth, ${formatLength(pond.overflow?.diameter ?? 0, display)} bore`;

/** ', 550 mm, up to +4.0 mm': a crest's width, and how far it rises over its lowest point. */
function crestWords(crest: Crest['crest'], { display }: Scenario): string {
  const width = crest[crest.length - 1][0] - crest[0][0];
  const over = Math.max(...crest.map(([, z]) => z)) - lowestOf(crest);
  const rises = over > LEVEL ? `, up to +${formatLength(over, display)}` : '';
  return `, ${formatLength(width, display)}${rises}`;
}

/** What a rod reads on a point: a bigger reading is lower. Against the benchmark's own reading where none is given. */
export function rodFigure(elevation: number, { elevation: from, reading }: Benchmark, { display }: Scenario): string {
  if (reading === undefined) return elevationFigure(from - elevation, display);
  const rod = reading + from - elevation;
  return rod < 0 ? 'above sight' : formatLevel(rod, display);
}

const ruler = (water: number | undefined, s: Scenario): string => {
  if (water === undefined) return '';
  return water < LEVEL ? 'dry' : formatLength(water, s.display);
};

export function heightsBlock(facts: SheetFacts): Block {
  const { scenario: s, benchmark, balance } = facts;
  const rows = heightsOf(facts).map(({ name, elevation, water }) => [
    name,
    elevationFigure(elevation - benchmark.elevation, s.display),
    rodFigure(elevation, benchmark, s),
    ...(balance ? [ruler(water, s)] : []),
  ]);
  const set = benchmark.reading === undefined ? 'rod, + yours' : 'rod';
  return {
    title: 'Heights',
    heads: ['a crest: width, rise', 'its lowest', set, ...(balance ? ['ruler'] : [])],
    rows,
    says: [benchmarkWords(benchmark, s), rulerWords(facts)],
  };
}

export function benchmarkWords({ name, reading }: Benchmark, { display }: Scenario): string {
  const rod =
    reading === undefined
      ? 'Rod column: add what your rod reads on the benchmark.'
      : `The rod reads ${formatLevel(reading, display)} on the benchmark.`;
  return `Elevations are from the benchmark, ${name} = 0. ${rod} A bigger reading is lower.`;
}

function rulerWords({ balance }: SheetFacts): string {
  return balance
    ? 'Ruler: water over it with the pump running and the pond at its mark, measured where it stands still, behind the brink.'
    : 'No running balance was found: what a ruler shows over lip and stones is not known.';
}
