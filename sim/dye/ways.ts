import type { Circuit } from '../network/circuit.ts';
import { NONE } from '../network/link.ts';
import type { Carrier } from './carry.ts';
import type { Places } from './places.ts';
import type { WaterWay } from './waterWays.ts';

/** Places of the filter's free water by what came there through the media, round them, or else. */
export const freeKinds = ({ through, round, other }: Places): readonly number[] => [through, round, other];

/**
 * The ways of dye between basins. A filter gives from its free water and takes into it; its bottom feed ends under the
 * media.
 */
export function addWays(
  carrier: Carrier,
  places: Places,
  { bottom, riser }: Pick<Circuit, 'bottom' | 'riser'>,
  ways: readonly WaterWay[],
): void {
  const out = (basin: number, kind: WaterWay['kind']): readonly number[] => {
    if (basin !== bottom) return [places.basins[basin]];
    return kind === 'bottom feed' ? [places.plenum] : freeKinds(places);
  };
  const into = (basin: number, kind: WaterWay['kind']): number => {
    if (basin === NONE) return places.lost;
    return kind === 'bottom feed' ? places.plenum : places.basins[basin];
  };
  for (const { kind, from, to, flow, splash } of ways) {
    if (flow < 0) {
      if (to !== NONE) for (const place of out(to, kind)) carrier.flow(place, into(from, 'other'), -flow);
      continue;
    }
    for (const place of out(from, kind)) {
      carrier.flow(place, into(to, kind), flow * (1 - splash));
      carrier.flow(place, places.lost, flow * splash);
    }
    if (kind === 'lip') countPassed(carrier, places, flow);
    const feed = places.basins[riser];
    if (kind === 'bottom feed') carrier.count(feed, places.broughtBottom, flow);
    if (kind === 'top feed' && to === bottom) carrier.count(feed, places.broughtTop, flow);
  }
}

function countPassed(carrier: Carrier, places: Places, flow: number): void {
  freeKinds(places).forEach((place, i) => {
    carrier.count(place, places.passed[i], flow);
  });
}
