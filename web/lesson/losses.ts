/** How the two ways through the teaching filter resist: what tells whether slower water rather takes the gap. */
import { gapVelocity, layerLoss } from '../../sim/laws/media.ts';
import { kinematicViscosity } from '../../sim/laws/water.ts';
import { porositiesAtStart } from '../../sim/network/clogging.ts';
import { gapWidth } from '../../sim/network/media.ts';
import type { Taught } from './taught.ts';

/** Parts of one head that go by the square of the speed, in the media and in the gap beside them, 0..1. */
export interface BySquare {
  readonly media: number;
  readonly gap: number;
}

/** Porosity that the deposit leaves of a layer, −. */
export const porosityOf = ({ scenario: { filter }, media: { layers } }: Taught, i: number): number =>
  filter ? porositiesAtStart(filter)[i]! : layers[i]!.porosity;

/** The gap as it stands, m: lifted media open it. */
export const gapNow = ({ balance: { lift }, media }: Taught): number => gapWidth(media, lift ?? 0, 1);

/** The layers wholly under water. */
export function bySquare(at: Taught): BySquare {
  const { scenario, balance, media } = at;
  const viscosity = kinematicViscosity(scenario.water.temperature);
  const u = (balance.flows['media'] ?? 0) / media.area;
  let [linear, square, length] = [0, 0, 0];
  media.layers.forEach(({ grain, permittivity, thickness, porosity }, i) => {
    const loss = layerLoss(grain, permittivity, thickness, porosity, porosityOf(at, i), viscosity);
    linear += thickness * loss.viscous * u;
    square += thickness * loss.inertial * u * u;
    length += thickness;
  });
  const head = balance.mediaHead ?? 0;
  const out = new Float64Array(4);
  gapVelocity(head, length, gapNow(at), viscosity, out);
  // At h = a u + b u², u dh/du = h + b u².
  const [speed, byHead] = out as unknown as [number, number];
  return {
    media: linear + square > 0 ? square / (linear + square) : 0,
    gap: head > 0 && byHead > 0 ? speed / (byHead * head) - 1 : 0,
  };
}
