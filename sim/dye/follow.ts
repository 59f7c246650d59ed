import { levelOf } from '../laws/storage.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import { volumesAt } from '../results/inside.ts';
import type { RunRecord } from '../results/record.ts';
import type { Media } from '../scenario/scenario.ts';
import { Carrier } from './carry.ts';
import { filterBasin, flowsOf, porosityAt, watersOf } from './filterState.ts';
import { addInner, emptyGap, fillGap, innerFlows } from './inFilter.ts';
import { type Places, placesOf } from './places.ts';
import { Plug } from './plug.ts';
import { gapWidth, type Waters, watersAt } from './waters.ts';
import { addWays, freeKinds } from './ways.ts';

/** A place gives its dye no faster than this, 1/s: a twentieth of a second is no time to watch. */
const FASTEST = 20;
/** Over long steps fewer events to follow: the rate times the step is at most this. */
const MOST_EVENTS = 400;
/** The gap's water moves on by at most this share of itself in a step, but no step is cut shorter than this, s. */
const GAP_SHARE = 0.5;
const SHORT = 0.2;

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
  private readonly record: RunRecord;
  private readonly network: Network;
  private readonly media: Media;
  private readonly filter: number;
  private readonly carrier: Carrier;
  private readonly volume: Float64Array;
  private readonly state: Float64Array;
  private readonly rates: Float64Array;
  private readonly ledgerRates: Float64Array;
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
    this.state = new Float64Array(record.network.size);
    this.rates = new Float64Array(record.network.size);
    this.ledgerRates = new Float64Array(record.network.quadratures);
    this.time = at;
    this.mass[this.places.plenum] = mass;
    this.plug = new Plug(this.watersAt(at).gap);
  }

  /** Carries the dye on to a later moment, s, between which and now nothing is switched. */
  to(end: number): void {
    while (this.time < end) {
      const { gap } = this.watersAt(this.time);
      const through = Math.abs(this.network.flow[this.network.parts.circuit.flow.gap]);
      const most = through > 0 ? Math.max(SHORT, (GAP_SHARE * gap) / through) : Number.POSITIVE_INFINITY;
      const left = end - this.time;
      this.step(left > most ? this.time + left / Math.ceil(left / most) : end);
    }
  }

  /** Waters of the filter at a moment, m³; leaves the network there. */
  watersAt(t: number): Waters {
    this.restore(t);
    return watersOf(this.network, this.media, porosityAt(this.media, this.record, t));
  }

  /** Dye in all places and the gap, kg. */
  total(): number {
    return this.mass.subarray(0, this.places.held).reduce((sum, mass) => sum + mass, this.plug.mass);
  }

  /** Water that each place holds for its dye at the network's state, m³, by number of the place. */
  volumesOf({ plenum, pore, free, beside }: Waters, out: Float64Array): void {
    const { places, state } = this;
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
    const time = end - begin;
    const mid = begin + time / 2;
    const before = this.levelAt(begin);
    const after = this.levelAt(end);
    const settings = this.restore(mid);
    const porosity = porosityAt(this.media, this.record, mid);
    const width = gapWidth(this.media, network.mediaHead, network.parts.circuit.feeds.liftHead);
    const waters = (level: number): Waters =>
      watersAt(network.parts.basins[this.filter].storage, this.media, porosity, width, level);
    const step = { before: waters(before), after: waters(after), flows: flowsOf(network), time };
    const inner = innerFlows(step, plug.volume);
    this.volumesOf(waters(network.level[this.filter]), this.volume);
    carrier.clear();
    const owes = emptyGap(carrier, places, plug, inner, mass, time);
    addInner(carrier, places, inner, step);
    addWays(carrier, places, network, settings, this.ledgerRates);
    carrier.carry(mass, this.volume, time, Math.max(1, Math.min(FASTEST, MOST_EVENTS / time)));
    fillGap(places, plug, inner, owes, mass, time);
    this.time = end;
  }

  private levelAt(t: number): number {
    volumesAt(this.record, t, this.state);
    return levelOf(this.network.parts.basins[this.filter].storage, this.state[this.filter]);
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
