import type { Builder } from './builder.ts';
import type { FeedFlows } from './feeds.ts';
import { LEDGER } from './ledger.ts';
import { NONE } from './link.ts';
import type { MainLineFlow } from './mainLine.ts';

/** Where the circuit's flows and slopes stand. */
export interface Circuit {
  readonly main: MainLineFlow;
  readonly feeds: FeedFlows;
  readonly vault: number;
  readonly riser: number;
  /** Level at which the pipework is full, m. */
  readonly fullAt: number;
  /** Basins in which the feeds end. */
  readonly bottom: number;
  readonly top: number;
  readonly flow: { main: number; bottom: number; top: number; media: number; gap: number };
  /** Jacobian places of the main: vault and riser rows by vault and riser columns. */
  readonly mainPlaces: readonly [vv: number, vr: number, rv: number, rr: number];
  /** Places of a feed: riser row, then the row of its own end, each by riser, bottom and top columns. */
  readonly bottomPlaces: FeedPlaces;
  readonly topPlaces: FeedPlaces;
  /** Gradient places of pumped and energy by vault and riser. */
  readonly pumpedPlaces: readonly [number, number];
  readonly energyPlaces: readonly [number, number];
}

type FeedPlaces = readonly [rr: number, rb: number, rt: number, er: number, eb: number, et: number];

/** Names the circuit's flows and finds its places. */
export function placeCircuit(
  b: Builder,
  main: MainLineFlow,
  feeds: FeedFlows,
  ends: { vault: number; riser: number; bottom: number; top: number },
  fullAt: number,
): Circuit {
  const { vault, riser, bottom, top } = ends;
  const { jacobian: j, gradient: g } = b;
  const feedPlaces = (present: boolean, end: number): FeedPlaces => {
    const at = (row: number, column: number): number => (present ? j.place(row, column) : NONE);
    return [at(riser, riser), at(riser, bottom), at(riser, top), at(end, riser), at(end, bottom), at(end, top)];
  };
  const hasMedia = feeds.hasMedia;
  return {
    main,
    feeds,
    vault,
    riser,
    fullAt,
    bottom,
    top,
    flow: {
      main: b.flow('main'),
      bottom: feeds.bottomPipe ? b.flow('bottom feed') : NONE,
      top: feeds.topPipe ? b.flow('top feed') : NONE,
      media: hasMedia ? b.flow('media') : NONE,
      gap: hasMedia ? b.flow('gap') : NONE,
    },
    mainPlaces: [j.place(vault, vault), j.place(vault, riser), j.place(riser, vault), j.place(riser, riser)],
    bottomPlaces: feedPlaces(feeds.bottomPipe !== undefined, bottom),
    topPlaces: feedPlaces(feeds.topPipe !== undefined, top),
    pumpedPlaces: [g.place(LEDGER.pumped, vault), g.place(LEDGER.pumped, riser)],
    energyPlaces: [g.place(LEDGER.energy, vault), g.place(LEDGER.energy, riser)],
  };
}
