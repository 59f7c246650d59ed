import { levelOf } from '../laws/storage.ts';
import { gapWidth } from '../network/media.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import { volumesAt } from '../results/inside.ts';
import type { RunRecord } from '../results/record.ts';
import type { Media } from '../scenario/scenario.ts';
import { Carrier } from './carry.ts';
import { filterBasin, flowsOf, porosityAt, watersOf } from './filterState.ts';
import { addInner, emptyGap, type FilterStep, fillGap, innerFlows } from './inFilter.ts';
import { type Places, placesOf } from './places.ts';
import { Plug } from './plug.ts';
import { type Waters, watersAt } from './waters.ts';
import { agree, waterWays } from './waterWays.ts';
import { addWays, freeKinds } from './ways.ts';

/** A place gives its dye no faster than this, 1/s: a twentieth of a second is no time to watch. */
const FASTEST = 20;
/** Over long steps fewer events to follow: the rate times the step is at most this, down to a rate of a second. */
const MOST_EVENTS = 400;
const SLOWEST = 1;
/** The gap's water moves on by at most this share of itself in a step, but no step is cut shorter than this, s. */
const GAP_SHARE = 0.5;
const SHORT = 0.2;
/** A place of more than this, m³, fills or empties by no more than this share of itself in a step. */
const LEAST = 1e-4;
const MOST_CHANGE = 0.2;
/** A step's flows carry it in pieces in which a place of more than so much, m³, changes by at most this share of itself. */
const LEAST_IN_PIECES = 1e-5;
const PIECE = 0.02;
const MOST_PIECES = 20;

/**
 * Dye on its way through a run: masses by place, carried by the record's own flows, each step's as they are at its
 * middle. Second order in the step; exact for flows that do not change, but for what goes through the gap.
 */
export class DyeOnItsWay {
  readonly places: Places;
  readonly mass: Float64Array;
  readonly plug: Plug;
  /** Moment up to which it has been carried, s. */
  time: number;
  /** Waters of the filter at that moment, m³, and what goes through the gap then, m³/s. */
  private now: Waters;
  private gapFlow = 0;
  private readonly record: RunRecord;
  private readonly network: Network;
  private readonly media: Media;
  private readonly filter: number;
  private readonly carrier: Carrier;
  private readonly volume: Float64Array;
  private readonly volumeAfter: Float64Array;
  private readonly mean: Float64Array;
  private readonly before: Float64Array;
  private readonly after: Float64Array;
  /** Volumes of the basins where the network was last put, m³. */
  readonly state: Float64Array;
  private readonly rates: Float64Array;
  private readonly ledgerRates: Float64Array;
  private porosity: readonly number[] = [];
  private applied: Settings | undefined;

  constructor(record: RunRecord, media: Media, at: number, mass: number) {
    this.record = record;
    this.network = record.network;
    this.media = media;
    this.filter = filterBasin(record.network);
    this.places = placesOf(record.network, Math.round(media.tanks));
    this.carrier = new Carrier(this.places.size);
    this.mass = new Float64Array(this.places.size);
    this.volume = new Float64Array(this.places.size);
    this.volumeAfter = new Float64Array(this.places.size);
    this.mean = new Float64Array(this.places.size);
    this.before = new Float64Array(record.network.size);
    this.after = new Float64Array(record.network.size);
    this.state = new Float64Array(record.network.size);
    this.rates = new Float64Array(record.network.size);
    this.ledgerRates = new Float64Array(record.network.quadratures);
    this.time = at;
    this.mass[this.places.plenum] = mass;
    this.now = this.standAt(at);
    this.plug = new Plug(this.now.gap);
  }

  /** Carries the dye on to a later moment, s, between which and now nothing is switched. */
  to(end: number): void {
    while (this.time < end) {
      const left = end - this.time;
      const most = this.longest();
      this.look(this.time, this.before, this.volume);
      let next = left > most ? this.time + left / Math.ceil(left / most) : end;
      this.look(next, this.after, this.volumeAfter);
      while (next - this.time > SHORT && this.changes()) {
        next = (this.time + next) / 2;
        this.look(next, this.after, this.volumeAfter);
      }
      this.step(next);
    }
  }

  /** Longest step by what the gap holds, s. */
  private longest(): number {
    const { now, gapFlow } = this;
    return gapFlow > 0 ? Math.max(SHORT, (GAP_SHARE * now.gap) / gapFlow) : Number.POSITIVE_INFINITY;
  }

  /** Waters of the filter at a moment, m³, from which the next step starts. */
  private standAt(t: number): Waters {
    const waters = this.watersAt(t);
    this.gapFlow = Math.abs(this.network.flow[this.network.parts.circuit.flow.gap]);
    return waters;
  }

  /** Volumes of the basins and of all places at a moment, the media as the network has them now, m³. */
  private look(t: number, basins: Float64Array, places: Float64Array): void {
    volumesAt(this.record, t, basins);
    this.volumesOf(this.waters(basins), basins, places);
  }

  /** Whether a place fills or empties by more than a step may have it. */
  private changes(): boolean {
    return this.volume.some((volume, i) => {
      const most = Math.max(volume, this.volumeAfter[i]);
      return most > LEAST && Math.abs(this.volumeAfter[i] - volume) > MOST_CHANGE * most;
    });
  }

  /** Waters of the filter at a moment, m³; leaves the network there. */
  watersAt(t: number): Waters {
    this.restore(t);
    this.porosity = porosityAt(this.media, this.record, t);
    return watersOf(this.network, this.media, this.porosity);
  }

  /** Dye in all places and the gap, kg. */
  total(): number {
    return this.mass.subarray(0, this.places.held).reduce((sum, mass) => sum + mass, this.plug.mass);
  }

  /** Water that each place holds for its dye, m³, by number of the place, at the volumes of the basins. */
  volumesOf({ plenum, pore, free, beside }: Waters, state: Float64Array, out: Float64Array): void {
    const { places } = this;
    out.fill(1);
    places.basins.forEach((place, i) => {
      out[place] = Math.max(0, state[i]);
    });
    out[places.plenum] = plenum;
    for (const tank of places.tanks) out[tank] = pore / places.tanks.length;
    for (const kind of freeKinds(places)) out[kind] = Math.max(0, free);
    out[places.beside] = beside;
    out[places.lost] = 0;
  }

  private step(end: number): void {
    const { carrier, places, network, mass, plug, time: begin } = this;
    const { circuit } = network.parts;
    const time = end - begin;
    const after = this.standAt(end);
    const mid = begin + time / 2;
    const settings = this.restore(mid);
    const ways = waterWays(network, settings, this.ledgerRates);
    agree(
      ways,
      this.rates.map((rate, i) => (this.after[i] - this.before[i]) / time - rate),
    );
    const bottom = ways.find(({ kind }) => kind === 'bottom feed')?.flow ?? 0;
    const flows = { ...flowsOf(network), bottom };
    const step = { before: this.now, after, flows, time };
    const inner = innerFlows(step, plug.volume);
    const pieces = this.piecesOf(step.before, step.after);
    carrier.clear();
    const owes = emptyGap(carrier, places, plug, inner, mass, time);
    addInner(carrier, places, inner, step);
    addWays(carrier, places, circuit, ways);
    const fastest = this.fastest(step, inner.media);
    for (let k = 0; k < pieces; k++) {
      this.meanVolumes(k / pieces, (k + 1) / pieces);
      carrier.carry(mass, this.mean, time / pieces, fastest);
    }
    fillGap(places, plug, inner, owes, mass, time);
    this.time = end;
    this.now = step.after;
  }

  /** Greatest rate at which a place may give its dye, 1/s: never less than twice that of the wet media's tanks. */
  private fastest({ before, after, time }: FilterStep, media: number): number {
    const ofTanks = before.pore === after.pore && after.pore > 0 ? Math.abs(media) / after.pore : 0;
    return Math.max(SLOWEST, Math.min(FASTEST, MOST_EVENTS / time), 2 * ofTanks * this.places.tanks.length);
  }

  /** Waters of the filter at volumes of the basins, gap and pores as they are at the network's state. */
  private waters(volumes: Float64Array): Waters {
    const { network, media, filter, porosity } = this;
    const { storage } = network.parts.basins[filter];
    const width = gapWidth(media, network.mediaHead, network.parts.circuit.feeds.liftHead);
    return watersAt(storage, media, porosity, width, levelOf(storage, volumes[filter]));
  }

  /** How many pieces a step is carried in, its flows held: so many that no place changes much in one. */
  private piecesOf(before: Waters, after: Waters): number {
    this.volumesOf(before, this.before, this.volume);
    this.volumesOf(after, this.after, this.volumeAfter);
    const change = this.volume.reduce((most, volume, i) => {
      const whole = Math.max(volume, this.volumeAfter[i]);
      return whole > LEAST_IN_PIECES ? Math.max(most, Math.abs(this.volumeAfter[i] - volume) / whole) : most;
    }, 0);
    return Math.max(1, Math.min(MOST_PIECES, Math.ceil(change / PIECE)));
  }

  /**
   * Volumes that hold between two shares of a step, in which they change evenly: logarithmic means, by which what
   * empties takes its dye along as it should.
   */
  private meanVolumes(from: number, to: number): void {
    this.volume.forEach((volume, i) => {
      const change = this.volumeAfter[i] - volume;
      this.mean[i] = logarithmicMean(volume + from * change, volume + to * change);
    });
  }

  /** Puts the network where it was at a moment, and returns the settings then in force. */
  private restore(t: number): Settings {
    const { record, network, state } = this;
    volumesAt(record, t, state);
    const settings = record.settingsAt(record.rowAt(t));
    if (settings !== this.applied) network.apply(settings);
    this.applied = settings;
    network.rates(t, state, this.rates, this.ledgerRates);
    return settings;
  }
}

/** Mean of two volumes over the time in which one becomes the other at a steady rate of growth. */
function logarithmicMean(a: number, b: number): number {
  const middle = (a + b) / 2;
  // Close together the quotient cancels, and the middle is the mean to rounding.
  if (Math.abs(a - b) <= 1e-6 * middle) return middle;
  const [low, high] = [Math.max(Math.min(a, b), 1e-3 * middle), Math.max(a, b)];
  return (high - low) / Math.log(high / low);
}
