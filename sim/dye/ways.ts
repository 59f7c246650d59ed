import { holeFlow } from '../laws/orifice.ts';
import { LEDGER } from '../network/ledger.ts';
import { type Link, NONE } from '../network/link.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import type { Carrier } from './carry.ts';
import type { Places } from './places.ts';

const hole = new Float64Array(3);

/**
 * The ways of dye between basins, by the flows of a network as it was asked last. What evaporates leaves its dye; hose,
 * rain and autofill bring none. A filter gives from its free water and takes into it; its bottom feed ends under the
 * media.
 *
 * @param ledgerRates rates of the ledger's rows at that state
 */
export function addWays(
  carrier: Carrier,
  places: Places,
  network: Network,
  settings: Settings,
  ledgerRates: Float64Array,
): void {
  const { parts, flow, level } = network;
  for (const { link, name } of parts.crests) {
    addLink(carrier, places, network, link);
    if (name === 'lip') countLip(carrier, places, flow[link.flow]);
  }
  for (const { link } of parts.seeps) addLink(carrier, places, network, link);
  for (const { link } of parts.streams) addLink(carrier, places, network, link);
  if (parts.overflow) addLink(carrier, places, network, parts.overflow.link);
  for (const leak of settings.leaks) {
    holeFlow(leak.area, level[leak.basin] - leak.elevation, hole);
    move(carrier, places, network, leak.basin, places.lost, hole[0]);
  }
  move(carrier, places, network, parts.pond, places.lost, ledgerRates[LEDGER.pumpedOut]);
  addCircuit(carrier, places, network);
}

function addLink(carrier: Carrier, places: Places, network: Network, { flow, from, to, splash }: Link): void {
  const q = network.flow[flow];
  const end = to === NONE ? places.lost : places.basins[to];
  if (q < 0) {
    if (to !== NONE) move(carrier, places, network, to, places.basins[from], -q);
    return;
  }
  move(carrier, places, network, from, end, q * (1 - splash));
  if (splash > 0) move(carrier, places, network, from, places.lost, q * splash);
}

/** Water out of a basin; the filter's is of three kinds, each with its share of it. */
function move(carrier: Carrier, places: Places, { parts }: Network, from: number, to: number, q: number): void {
  if (q <= 0) return;
  const own = places.basins[from];
  if (from === parts.circuit.bottom) for (const kind of freeKinds(places)) carrier.flow(kind, to, q);
  else carrier.flow(own, to, q);
}

export const freeKinds = ({ through, round, other }: Places): readonly number[] => [through, round, other];

function countLip(carrier: Carrier, places: Places, q: number): void {
  freeKinds(places).forEach((kind, i) => {
    carrier.count(kind, places.passed[i], q);
  });
}

function addCircuit(carrier: Carrier, places: Places, network: Network): void {
  const { circuit } = network.parts;
  const { flow } = network;
  const riser = places.basins[circuit.riser];
  carrier.flow(places.basins[circuit.vault], riser, flow[circuit.flow.main]);
  const bottom = flow[circuit.flow.bottom];
  carrier.flow(riser, places.plenum, bottom);
  carrier.count(riser, places.broughtBottom, bottom);
  if (circuit.flow.top === NONE) return;
  const top = flow[circuit.flow.top];
  if (top >= 0) carrier.flow(riser, places.basins[circuit.top], top);
  else move(carrier, places, network, circuit.top, riser, -top);
  if (circuit.top === circuit.bottom) carrier.count(riser, places.broughtTop, top);
}
