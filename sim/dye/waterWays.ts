import { holeFlow } from '../laws/orifice.ts';
import { LEDGER } from '../network/ledger.ts';
import { type Link, NONE } from '../network/link.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';

/** A way for water from a basin to another or out of the site. */
export interface WaterWay {
  readonly kind: 'lip' | 'bottom feed' | 'top feed' | 'other';
  /** Numbers of basins; `to` NONE: it is lost. */
  readonly from: number;
  readonly to: number;
  /** m³/s, negative where it runs back. */
  flow: number;
  /** Fraction of a forward flow that is lost on its way. */
  readonly splash: number;
  /** What a correction counts against at least, m³/s: 0 for a pipe at rest, which may be shut. */
  readonly least: number;
}

/** An open crest at which the water just stands may pass what its levels do not show, m³/s. */
const AT_CREST = 1e-9;

const hole = new Float64Array(3);

/**
 * All ways that carry dye, with the flows of a network as it was asked last. What evaporates leaves its dye; hose, rain
 * and autofill bring none.
 *
 * @param ledgerRates rates of the ledger's rows at that state
 */
export function waterWays(network: Network, settings: Settings, ledgerRates: Float64Array): WaterWay[] {
  const { parts, flow, level } = network;
  const ways: WaterWay[] = [];
  const add = (from: number, to: number, q: number, kind: WaterWay['kind'] = 'other', splash = 0, least = 0): void => {
    if (q !== 0 || least > 0) ways.push({ kind, from, to, flow: q, splash, least });
  };
  const link = (l: Link, least: number, kind?: WaterWay['kind']): void =>
    add(l.from, l.to, flow[l.flow], kind, l.splash, l.to === NONE ? 0 : least);
  for (const { link: l, name, open } of parts.crests)
    link(l, open > 0 ? AT_CREST : 0, name === 'lip' ? 'lip' : 'other');
  for (const { link: l } of parts.seeps) link(l, 0);
  for (const { link: l } of parts.streams) link(l, AT_CREST);
  if (parts.overflow) link(parts.overflow.link, 0);
  for (const leak of settings.leaks) {
    holeFlow(leak.area, level[leak.basin] - leak.elevation, hole);
    add(leak.basin, NONE, hole[0]);
  }
  add(parts.pond, NONE, ledgerRates[LEDGER.pumpedOut]);
  const { circuit } = parts;
  add(circuit.vault, circuit.riser, flow[circuit.flow.main]);
  if (circuit.flow.bottom !== NONE) add(circuit.riser, circuit.bottom, flow[circuit.flow.bottom], 'bottom feed');
  if (circuit.flow.top !== NONE) add(circuit.riser, circuit.top, flow[circuit.flow.top], 'top feed');
  return ways;
}

/**
 * Corrects flows between basins by as little as makes them fill and empty the basins as the record says they did: flows
 * over a drowned lip near rest, read off levels, are mostly rounding. The least correction, each flow's counted against
 * its own size, is a Laplacian's solution; the last basin, the pond, takes up what does not close.
 *
 * @param ways whose flows are replaced
 * @param short by how much each basin's volume grew more than by these flows, m³/s
 */
export function agree(ways: readonly WaterWay[], short: Float64Array): void {
  const n = short.length - 1;
  const between = ways.filter(({ from, to }) => to !== NONE && from !== to);
  const matrix = Array.from({ length: n }, (_, i) => new Float64Array(i + 1));
  for (const way of between) {
    const { from, to } = way;
    const weight = weightOf(way);
    const [low, high] = from < to ? [from, to] : [to, from];
    matrix[low][low] += weight;
    if (high === n) continue;
    matrix[high][high] += weight;
    matrix[high][low] -= weight;
  }
  const push = Float64Array.from(short);
  push[n] = 0;
  solveLaplacian(matrix, push);
  for (const way of between) way.flow += weightOf(way) * (push[way.to] - push[way.from]);
}

const weightOf = ({ flow, least }: WaterWay): number => Math.max(Math.abs(flow), least);

/** A basin counts as cut off where this little of its weight is left. */
const CUT_OFF = 1e-12;

/** Solves with the lower triangle of a symmetric positive matrix, row by row from its first entry on, in place. */
function solveLaplacian(rows: readonly Float64Array[], x: Float64Array): void {
  const first = rows.map((row, i) => row.findIndex((value, j) => value !== 0 || j === i));
  const own = rows.map((row, i) => row[i]);
  rows.forEach((row, i) => {
    for (let j = first[i]; j < i; j++) {
      for (let k = Math.max(first[i], first[j]); k < j; k++) row[j] -= row[k] * rows[j][k] * rows[k][k];
      row[j] = rows[j][j] > 0 ? row[j] / rows[j][j] : 0;
      row[i] -= row[j] * row[j] * rows[j][j];
      x[i] -= row[j] * x[j];
    }
    if (row[i] <= CUT_OFF * own[i]) row[i] = 0;
  });
  rows.forEach((row, i) => {
    x[i] = row[i] > 0 ? x[i] / row[i] : 0;
  });
  for (let i = rows.length - 1; i >= 0; i--) for (let j = first[i]; j < i; j++) x[j] -= rows[i][j] * x[i];
}
