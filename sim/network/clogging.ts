import { capturedShare, depositRoom, porosityLeft } from '../laws/deposit.ts';
import type { Filter, Media } from '../scenario/scenario.ts';
import { type MediaBed, setPorosity } from './media.ts';
import type { Settled } from './settings.ts';

/** A layer as the deposit finds it. */
interface ClogLayer {
  readonly name: string;
  /** Share it keeps of the solids that enter it, while it has room. */
  readonly keeps: number;
  /** Settled volume it takes at the most, m³. */
  readonly room: number;
  /** Volume over which the deposit spreads, m³. */
  readonly bulk: number;
  readonly porosity: number;
  readonly beta: number;
}

/** Solids that a stretch of water left, m³ of settled volume: what each layer holds, and what passed them all. */
export interface Taken {
  readonly held: number[];
  readonly passed: number;
}

const NEVER = Number.POSITIVE_INFINITY;
/** Below this nothing goes through the media, m³/s: rounding of water at rest. */
const NO_FLOW = 1e-9;
/** A layer within this of its room is full, as a share of it: rounding. */
const FULL = 1e-12;

/**
 * How the media take up the debris of the water that goes through them, from the bottom up. What one layer keeps the
 * next does not get, and what a full one no longer takes goes on. The part of a layer above the lip gets no water.
 */
export class Clogging {
  /** Settled solids per volume of water, −. */
  readonly debris: number;
  readonly layers: readonly ClogLayer[];
  /** What the layers hold at t = 0, m³; a layer holds no more than it has room for. */
  readonly atStart: readonly number[];
  private readonly bed: MediaBed;

  constructor(bed: MediaBed, debris: number, lip: number) {
    this.bed = bed;
    this.debris = debris;
    this.layers = clogLayers(bed, lip);
    this.atStart = this.layers.map(({ room }, i) => Math.min(room, bed.layers[i].deposit));
  }

  /** Settled volume per volume of water in each layer, and what is left for none of them, −. */
  private shares(held: readonly number[]): { kept: number[]; left: number } {
    let left = this.debris;
    const kept = this.layers.map((layer, i) => {
      const keeps = held[i] < layer.room * (1 - FULL) ? left * layer.keeps : 0;
      left -= keeps;
      return keeps;
    });
    return { kept, left };
  }

  /** Lets water go through, m³. Between two moments at which a layer fills up every deposit grows evenly with it. */
  take(before: readonly number[], water: number): Taken {
    const held = [...before];
    let passed = 0;
    let rest = water;
    while (rest > 0) {
      const { kept, left } = this.shares(held);
      const through = Math.min(rest, this.untilFull(held, kept));
      passed += left * through;
      rest -= through;
      this.layers.forEach(({ room }, i) => {
        const grown = held[i] + kept[i] * through;
        held[i] = grown >= room * (1 - FULL) && kept[i] > 0 ? room : grown;
      });
    }
    return { held, passed };
  }

  /** Deposits foreseen at a flow through the media, m³/s. */
  foresee(held: readonly number[], since: number, flow: number): Settled {
    const through = flow > NO_FLOW ? flow : 0;
    const perSecond = this.shares(held).kept.map((kept) => kept * through);
    return { since, held, perSecond };
  }

  /** Water until the next layer is full, m³. */
  private untilFull(held: readonly number[], kept: readonly number[]): number {
    return Math.min(...this.layers.map(({ room }, i) => (kept[i] > 0 ? (room - held[i]) / kept[i] : NEVER)));
  }

  /**
   * Water until a layer is full or its loss has grown by a share of itself, m³; Infinity where nothing settles.
   * By Ergun's (1 − ε)²/ε³ the loss grows by (2/(1 − ε) + 3/ε) of itself per porosity lost.
   */
  waterUntil(growth: number, held: readonly number[]): number {
    const { kept } = this.shares(held);
    const until = this.layers.map((layer, i) => {
      if (kept[i] <= 0) return NEVER;
      const e = this.porosity(i, held[i]);
      return (growth * layer.bulk) / (layer.beta * kept[i] * (2 / (1 - e) + 3 / e));
    });
    return Math.min(this.untilFull(held, kept), ...until);
  }

  /** Porosity that a deposit leaves a layer, −. */
  porosity(i: number, held: number): number {
    return porosityWith(this.layers[i], held);
  }

  /** Gives the bed the losses of what has settled at a time. */
  lay({ since, held, perSecond }: Settled, t: number): void {
    for (let i = 0; i < held.length; i++) {
      const now = Math.min(held[i] + perSecond[i] * Math.max(0, t - since), Math.max(held[i], this.layers[i].room));
      setPorosity(this.bed, i, this.porosity(i, now));
    }
  }
}

const porosityWith = ({ porosity, beta, bulk }: ClogLayer, held: number): number =>
  bulk > 0 ? porosityLeft(porosity, beta, held / bulk) : porosity;

/**
 * Porosity that settled volumes leave of each layer, −, from the bottom up: they lie in what of it is below the lip.
 *
 * @param held settled volume by the layer's name, m³
 */
export function porositiesLeft({ media, lip }: Filter, held: Readonly<Record<string, number>>): number[] {
  if (!media) return [];
  const crest = Math.min(...lip.crest.map(([, z]) => z));
  return clogLayers(media, crest).map((layer) => porosityWith(layer, held[layer.name] ?? 0));
}

/** Porosity that what the file lets the layers hold at t = 0 leaves of each, −, from the bottom up. */
export const porositiesAtStart = (filter: Filter): number[] =>
  porositiesLeft(filter, Object.fromEntries((filter.media?.layers ?? []).map(({ name, deposit }) => [name, deposit])));

function clogLayers({ area, bottom, layers }: Pick<Media, 'area' | 'bottom' | 'layers'>, lip: number): ClogLayer[] {
  let from = bottom;
  return layers.map((layer) => {
    const wet = Math.min(layer.thickness, Math.max(0, lip - from));
    from += layer.thickness;
    const { name, porosity, beta, capture } = layer;
    const bulk = area * wet;
    return { name, keeps: capturedShare(capture, wet), room: depositRoom(porosity, beta, bulk), bulk, porosity, beta };
  });
}
