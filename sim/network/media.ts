import { gapVelocity, layerLoss, liftHead } from '../laws/media.ts';
import { type Pipe, pipeLoss } from '../laws/pipe.ts';
import { density, kinematicViscosity } from '../laws/water.ts';
import type { Media, MediaLayer } from '../scenario/scenario.ts';
import type { RisingEquation } from '../solver/roots.ts';

/** Media and their side gap, ready to be asked what a velocity through them costs. */
export interface MediaBed {
  readonly bottom: number;
  readonly area: number;
  readonly perimeter: number;
  /** Gap at rest, m, and how fast it opens past the lift head, m. */
  readonly gap: number;
  readonly slack: number;
  readonly liftHead: number;
  readonly viscosity: number;
  readonly layers: readonly MediaLayer[];
  /** Per layer from the bottom up: its lower end and thickness, m, viscous and inertial loss per metre of it. */
  readonly from: Float64Array;
  readonly thickness: Float64Array;
  readonly viscous: Float64Array;
  readonly inertial: Float64Array;
}

export function makeBed(media: Media, celsius: number): MediaBed {
  const viscosity = kinematicViscosity(celsius);
  let z = media.bottom;
  const from = media.layers.map((l) => {
    z += l.thickness;
    return z - l.thickness;
  });
  const bed: MediaBed = {
    layers: media.layers,
    bottom: media.bottom,
    area: media.area,
    perimeter: media.perimeter,
    gap: media.gap,
    slack: media.liftSlack,
    liftHead: liftHead(media.submergedWeight + media.holdDown, media.area, density(celsius)),
    viscosity,
    from: Float64Array.from(from),
    thickness: Float64Array.from(media.layers, (l) => l.thickness),
    viscous: new Float64Array(media.layers.length),
    inertial: new Float64Array(media.layers.length),
  };
  media.layers.forEach((layer, i) => {
    setPorosity(bed, i, layer.porosity);
  });
  return bed;
}

/** Volume of the empty bed, m³. */
export function bedVolume(media: Media): number {
  return media.area * media.layers.reduce((sum, layer) => sum + layer.thickness, 0);
}

/**
 * Width of the gap as it is, m: at rest, and opened where the head lifts the media.
 *
 * @param head across the media, m; negative where water runs down, which presses them on the rack
 * @param liftHead at which they lift, m
 */
export function gapWidth({ gap, liftSlack }: Pick<Media, 'gap' | 'liftSlack'>, head: number, liftHead: number): number {
  return gap + liftSlack * Math.max(0, head / liftHead - 1);
}

/** Gives a layer of a bed the losses of a present porosity. */
export function setPorosity(bed: MediaBed, i: number, present: number): void {
  const { grain, permittivity, thickness, porosity } = bed.layers[i];
  const loss = layerLoss(grain, permittivity, thickness, porosity, present, bed.viscosity);
  bed.viscous[i] = loss.viscous;
  bed.inertial[i] = loss.inertial;
}

/**
 * Flow of the bottom feed at which clean media, wholly under water, are about to lift, m³/s: what goes through them
 * and round them at the lift head.
 *
 * @param celsius temperature of the water
 */
export function liftOnset(media: Media, celsius: number): number {
  const bed = makeBed(media, celsius);
  let viscous = 0;
  let inertial = 0;
  let length = 0;
  bed.thickness.forEach((thickness, i) => {
    viscous += thickness * bed.viscous[i];
    inertial += thickness * bed.inertial[i];
    length += thickness;
  });
  const head = bed.liftHead;
  const u = (2 * head) / (viscous + Math.sqrt(viscous * viscous + 4 * inertial * head));
  gapVelocity(head, length, bed.gap, bed.viscosity, gap);
  return bed.area * u + bed.perimeter * bed.gap * gap[0];
}

const gap = new Float64Array(4);
const loss = new Float64Array(2);

/**
 * The bottom feed and the media behind it as one equation in the velocity u through the media: what the pipe loses at
 * media plus gap flow, plus the head across the media, is the drive. Explicit in u all the way: the head follows from
 * u, the gap's width and velocity from the head.
 */
export class MediaEquation implements RisingEquation {
  value = 0;
  slope = 0;
  drive = 0;
  /** Upward flow lifts the media; downward flow presses them on the rack. */
  upward = true;
  /** At the last u: head across the media m, flows through media and gap m³/s. */
  head = 0;
  throughMedia = 0;
  throughGap = 0;
  /** Slopes of the whole flow and of the head by u. */
  flowByU = 0;
  headByU = 0;

  private wet = 0;
  private wetByLevel = 0;
  private viscous = 0;
  private inertial = 0;
  private viscousByLevel = 0;
  private inertialByLevel = 0;
  private flowByLevel = 0;
  private residualByLevel = 0;
  readonly bed: MediaBed;
  readonly pipe: Pipe;

  constructor(bed: MediaBed, pipe: Pipe) {
    this.bed = bed;
    this.pipe = pipe;
  }

  /** Media resist only where they are wet: sums up what stands under the filter's level. */
  wetTo(level: number): void {
    const { from, thickness, viscous, inertial } = this.bed;
    this.wet = 0;
    this.viscous = 0;
    this.inertial = 0;
    this.wetByLevel = 0;
    this.viscousByLevel = 0;
    this.inertialByLevel = 0;
    for (let i = 0; i < from.length; i++) {
      const depth = level - from[i];
      if (depth <= 0) break;
      const wet = Math.min(depth, thickness[i]);
      this.wet += wet;
      this.viscous += wet * viscous[i];
      this.inertial += wet * inertial[i];
      if (depth < thickness[i]) {
        this.wetByLevel = 1;
        this.viscousByLevel = viscous[i];
        this.inertialByLevel = inertial[i];
      }
    }
  }

  at(u: number): void {
    const { bed } = this;
    const head = (this.viscous + this.inertial * u) * u;
    const headByU = this.viscous + 2 * this.inertial * u;
    const headByLevel = (this.viscousByLevel + this.inertialByLevel * u) * u;
    const lifted = this.upward && head > bed.liftHead;
    const width = bed.gap + (lifted ? bed.slack * (head / bed.liftHead - 1) : 0);
    const widthByHead = lifted ? bed.slack / bed.liftHead : 0;
    gapVelocity(head, this.wet, width, bed.viscosity, gap);
    const p = bed.perimeter;
    this.head = head;
    this.headByU = headByU;
    this.throughMedia = bed.area * u;
    this.throughGap = p * width * gap[0];
    const gapByHead = p * (width * (gap[1] + gap[2] * widthByHead) + gap[0] * widthByHead);
    this.flowByU = bed.area + gapByHead * headByU;
    this.flowByLevel = gapByHead * headByLevel + p * width * gap[3] * this.wetByLevel;
    pipeLoss(this.pipe, this.throughMedia + this.throughGap, 0, loss);
    this.value = loss[0] + head - this.drive;
    this.slope = loss[1] * this.flowByU + headByU;
    this.residualByLevel = loss[1] * this.flowByLevel + headByLevel;
  }

  /** Slope of the flow by the drive at the last u, m²/s. */
  byDrive(): number {
    return this.flowByU / this.slope;
  }

  /** Slopes of what goes through the media alone, by the drive and by the wetted height, m²/s. */
  mediaByDrive(): number {
    return this.bed.area / this.slope;
  }

  mediaByWetting(): number {
    return (-this.bed.area * this.residualByLevel) / this.slope;
  }

  /** Slope of the flow by the filter's level through the wetted height alone, at constant drive, m²/s. */
  byWetting(): number {
    return this.flowByLevel - (this.flowByU * this.residualByLevel) / this.slope;
  }
}
