import { treatedFlow } from '../laws/removal.ts';
import type { Linearization } from '../solver/system.ts';
import type { Book } from './book.ts';
import type { Builder } from './builder.ts';
import type { FeedFlow, FeedFlows } from './feeds.ts';
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
  /** Gradient places of what goes up through the media and of what they treat, by riser and bottom. */
  readonly mediaPlaces: readonly [number, number];
  readonly treatedPlaces: readonly [number, number];
  /** What the media treat at the most, however much goes through them, m³/s. */
  readonly mostTreated: number;
}

type FeedPlaces = readonly [rr: number, rb: number, rt: number, er: number, eb: number, et: number];

/** Names the circuit's flows and finds its places. */
export function placeCircuit(
  b: Builder,
  main: MainLineFlow,
  feeds: FeedFlows,
  ends: { vault: number; riser: number; bottom: number; top: number },
  fullAt: number,
  mostTreated: number,
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
    mediaPlaces: [g.place(LEDGER.media, riser), g.place(LEDGER.media, bottom)],
    treatedPlaces: [g.place(LEDGER.treated, riser), g.place(LEDGER.treated, bottom)],
    mostTreated,
  };
}

const treated = new Float64Array(2);

/** Enters main, feeds, pumped water and energy at a speed of the pump; returns the head across the media, m. */
export function bookCircuit(c: Circuit, book: Book, speed: number): number {
  const { main, feeds } = c;
  const { level, f, g, flow } = book;
  main.speed = speed;
  main.at(level[c.vault], level[c.riser], feeds.shut ? c.fullAt : Number.POSITIVE_INFINITY);
  feeds.at(level[c.riser], level[c.bottom], level[c.top]);
  const { bottom, top } = feeds;
  flow[c.flow.main] = main.flow;
  if (c.flow.bottom >= 0) flow[c.flow.bottom] = bottom.flow;
  if (c.flow.top >= 0) flow[c.flow.top] = top.flow;
  if (c.flow.media >= 0) {
    flow[c.flow.media] = bottom.media;
    flow[c.flow.gap] = bottom.gap;
  }
  f[c.vault] -= main.flow;
  f[c.riser] += main.flow - bottom.flow - top.flow;
  f[c.bottom] += bottom.flow;
  f[c.top] += top.flow;
  g[LEDGER.pumped] += Math.max(0, main.flow);
  g[LEDGER.energy] += main.power;
  if (bottom.media > 0) {
    treatedFlow(bottom.media, c.mostTreated, treated);
    g[LEDGER.media] += bottom.media;
    g[LEDGER.treated] += treated[0];
  }
  if (book.slopes !== undefined) bookSlopes(c, book, book.slopes);
  return bottom.head;
}

function bookSlopes(c: Circuit, book: Book, into: Linearization): void {
  const { main, feeds } = c;
  const { jacobian, gradient } = into;
  const perVault = book.byVolume[c.vault];
  const perRiser = book.byVolume[c.riser];
  const byVault = main.byVault * perVault;
  const byRiser = main.byRiser * perRiser;
  jacobian[c.mainPlaces[0]] -= byVault;
  jacobian[c.mainPlaces[1]] -= byRiser;
  jacobian[c.mainPlaces[2]] += byVault;
  jacobian[c.mainPlaces[3]] += byRiser;
  if (main.flow > 0) {
    gradient[c.pumpedPlaces[0]] += byVault;
    gradient[c.pumpedPlaces[1]] += byRiser;
  }
  gradient[c.energyPlaces[0]] += main.powerByVault * perVault;
  gradient[c.energyPlaces[1]] += main.powerByRiser * perRiser;
  if (feeds.bottom.media > 0) bookTreatment(c, book, gradient);
  bookFeed(c, feeds.bottom, c.bottomPlaces, book, jacobian);
  bookFeed(c, feeds.top, c.topPlaces, book, jacobian);
}

function bookTreatment(c: Circuit, book: Book, gradient: Float64Array): void {
  const { bottom } = c.feeds;
  const byRiser = bottom.mediaByRiser * book.byVolume[c.riser];
  const byBottom = bottom.mediaByBottom * book.byVolume[c.bottom];
  gradient[c.mediaPlaces[0]] += byRiser;
  gradient[c.mediaPlaces[1]] += byBottom;
  gradient[c.treatedPlaces[0]] += byRiser * treated[1];
  gradient[c.treatedPlaces[1]] += byBottom * treated[1];
}

function bookFeed(c: Circuit, feed: FeedFlow, places: FeedPlaces, book: Book, jacobian: Float64Array): void {
  if (places[0] === NONE) return;
  const byRiser = feed.byRiser * book.byVolume[c.riser];
  const byBottom = feed.byBottom * book.byVolume[c.bottom];
  const byTop = feed.byTop * book.byVolume[c.top];
  jacobian[places[0]] -= byRiser;
  jacobian[places[1]] -= byBottom;
  jacobian[places[2]] -= byTop;
  jacobian[places[3]] += byRiser;
  jacobian[places[4]] += byBottom;
  jacobian[places[5]] += byTop;
}
