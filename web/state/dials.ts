/** The dials of each question: the few that decide it, and what else does. */
import type { Subject } from '../engine/protocol.ts';
import type { Dial, Dialed } from './dials-kinds.ts';
import { muck } from './dials-muck.ts';
import { autofill, autofillFlow, float, hoses } from './dials-supply.ts';
import { edge, fillMark, pondSize, poolSurfaces, stones } from './dials-water.ts';
import { checkValve, gap, pump, valve } from './dials-works.ts';

export type { Choice, Dial, Dialed, Option, Ruler } from './dials-kinds.ts';

/** Dials shown at once: fewer leave a question undecided, more crowd out what decides it. */
const [FEWEST, MOST] = [4, 6];
/** Stones of the pool the water comes home from that may take the place of other dials. */
const STONES = 2;

export interface DialSet {
  readonly shown: readonly Dial[];
  /** What is one press away. */
  readonly more: readonly Dial[];
}

type Maybe = Dial | undefined;

export function dialsFor(about: Subject, site: Dialed): DialSet {
  const [first, others] = laidOut[about](site);
  const deciding = first.filter((dial) => dial !== undefined);
  const rest = others.filter((dial) => dial !== undefined);
  const shown = deciding.slice(0, MOST);
  const more = [...deciding.slice(MOST), ...rest];
  return { shown: [...shown, ...more.splice(0, Math.max(0, FEWEST - shown.length))], more };
}

const laidOut: Record<Subject, (site: Dialed) => [deciding: Maybe[], others: Maybe[]]> = {
  stop: (site) => {
    const down = stones(site);
    const [surface, ...surfaces] = poolSurfaces(site);
    return [
      [fillMark(site), edge(site), checkValve(site), ...down.slice(0, STONES), surface],
      [
        ...down.slice(STONES),
        ...surfaces,
        ...pondSize(site),
        valve(site, 'topFeed'),
        valve(site, 'bottomFeed'),
        autofill(site),
        float(site),
        autofillFlow(site),
        ...hoses(site),
        pump(site),
      ],
    ];
  },
  // What fills a pond is typed beside its own answer.
  filling: () => [[], []],
  filter: (site) => [[valve(site, 'bottomFeed'), valve(site, 'topFeed'), gap(site), muck(site), pump(site)], []],
};
