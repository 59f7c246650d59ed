import type { Scenario } from '../scenario/scenario.ts';
import { Builder } from './builder.ts';
import { placeCircuit } from './circuit.ts';
import { Clogging } from './clogging.ts';
import { FeedFlows } from './feeds.ts';
import { addFilter, joinFilter } from './filter.ts';
import { addVault, joinVault } from './intake.ts';
import { LEDGER, LEDGER_ROWS } from './ledger.ts';
import { NONE } from './link.ts';
import { bedVolume, type MediaBed, MediaEquation, makeBed } from './media.ts';
import { Network } from './network.ts';
import { feedPipe, mainLineOf, riserStorage, topOfPipework } from './plumbing.ts';
import { addPond } from './pond.ts';
import { addReach, joinReach } from './watercourse.ts';

const nothing = (): void => {};

/** Builds the network of a site: basins in the order of the water's way, the pond last, and all that joins them. */
export function assemble(s: Scenario): Network {
  const b = new Builder();
  const vault = addVault(b, s.vault);
  const riser = b.basin('riser', riserStorage(s.plumbing, s.pump.suction));
  if (s.plumbing.leak) b.leaks.push({ basin: riser, ...s.plumbing.leak });
  const filter = s.filter ? addFilter(b, s.filter) : NONE;
  const reaches = s.watercourse.map((reach) => addReach(b, reach));
  const pond = addPond(b, s.pond);
  const ends = feedEnds(b, s, filter, reaches[0] ?? pond);

  joinVault(b, vault, pond, s.intake, s.vault.profile[s.vault.profile.length - 1][0]);
  if (s.filter) joinFilter(b, s.filter, filter, reaches[0] ?? pond);
  for (const [i, reach] of s.watercourse.entries()) joinReach(b, reach, reaches[i], reaches[i + 1] ?? pond);

  const feeds = makeFeeds(s);
  const circuit = placeCircuit(
    b,
    mainLineOf(s),
    feeds.flows,
    { vault, riser, ...ends },
    topOfPipework(s.plumbing),
    s.filter?.media ? s.filter.media.removal * bedVolume(s.filter.media) : 0,
  );
  const overflowLink = b.link('overflow', pond, NONE, LEDGER.overflow);
  const floatIn = s.autofill?.in === 'vault' ? vault : pond;
  const autofillLink = b.link('autofill', NONE, floatIn, LEDGER.autofill);
  b.flow('leak');
  b.flow('overflow');
  const draw = b.link('', pond, NONE, LEDGER.pumpedOut);
  return new Network({
    basins: b.basins,
    flowNames: b.flows,
    crests: b.crests,
    seeps: b.seeps,
    streams: b.streams,
    surfaces: b.surfaces,
    circuit,
    clogging: cloggingOf(s, feeds.bed),
    pond,
    overflow: s.pond.overflow && { link: overflowLink, ...s.pond.overflow },
    autofill: s.autofill && { link: autofillLink, full: s.autofill.flow, set: s.autofill.set, low: s.autofill.low },
    draw,
    runoff: s.pond.runoff,
    leaks: b.leaks,
    jacobianPattern: b.jacobian.pattern(),
    quadraturePattern: b.gradient.pattern(),
    quadratures: LEDGER_ROWS,
    leakLink: (basin, elevation, area) => ({ link: b.link('leak', basin, NONE, LEDGER.leak), elevation, area }),
    setBottomValve: feeds.turnBottom,
    setTopValve: feeds.turnTop,
  });
}

/** Basins in which the two feeds end; a feed that is not there ends where the other would. */
function feedEnds(b: Builder, s: Scenario, filter: number, first: number): { bottom: number; top: number } {
  const bottom = filter !== NONE ? filter : first;
  const to = s.plumbing.topFeed?.to;
  const top = to === undefined || (to === 'filter' && filter === NONE) ? bottom : b.indexOf(to);
  return { bottom, top };
}

function cloggingOf(s: Scenario, bed: MediaBed | undefined): Clogging | undefined {
  if (s.filter === undefined || bed === undefined) return undefined;
  if (s.debris === 0 && bed.layers.every(({ deposit }) => deposit === 0)) return undefined;
  return new Clogging(bed, s.debris, Math.min(...s.filter.lip.crest.map(([, z]) => z)));
}

function makeFeeds(s: Scenario): {
  flows: FeedFlows;
  bed: MediaBed | undefined;
  turnBottom: (x: number) => void;
  turnTop: (x: number) => void;
} {
  const { bottomFeed, topFeed, tee } = s.plumbing;
  const celsius = s.water.temperature;
  const bottom = bottomFeed && feedPipe(bottomFeed, celsius);
  const top = topFeed && feedPipe(topFeed, celsius);
  const bed = s.filter?.media && bottom ? makeBed(s.filter.media, celsius) : undefined;
  const media = bed && bottom ? new MediaEquation(bed, bottom.pipe) : undefined;
  const inlet = bottomFeed ? bottomFeed.inlet : tee;
  const outlet = topFeed ? topFeed.outlet : Number.POSITIVE_INFINITY;
  return {
    flows: new FeedFlows(tee, bottom?.pipe, inlet, top?.pipe, outlet, media),
    bed,
    turnBottom: bottom?.turn ?? nothing,
    turnTop: top?.turn ?? nothing,
  };
}
