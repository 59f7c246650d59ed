import type { Carrier } from './carry.ts';
import type { FilterFlows } from './figures.ts';
import type { Places } from './places.ts';
import type { Plug } from './plug.ts';
import type { Waters } from './waters.ts';
import { freeKinds } from './ways.ts';

/** A filter over a step: its waters at both ends, m³, its flows, m³/s, and how long it lasts, s. */
export interface FilterStep {
  readonly before: Waters;
  readonly after: Waters;
  readonly flows: FilterFlows;
  readonly time: number;
}

/** Flows inside a filter, upward, m³/s: through the media, and at both ends of the gap. */
export interface InnerFlows {
  readonly media: number;
  readonly low: number;
  readonly high: number;
}

/**
 * What of the bottom feed goes on up from the plenum, and how it parts; what the gap gives at its upper end follows from
 * its own water, whose volume changes as the gap opens or runs dry.
 */
export function innerFlows({ before, after, flows, time }: FilterStep, inGap: number): InnerFlows {
  const up = flows.bottom - (after.plenum - before.plenum) / time;
  const both = flows.media + flows.gap;
  const low = both === 0 ? 0 : (up * flows.gap) / both;
  return { media: up - low, low, high: low - (after.gap - inGap) / time };
}

/**
 * The ways of dye inside the filter. Where the level stands in the media their tanks grow and shrink with it, so that
 * each boundary between two of them moves and is passed by so much less.
 */
export function addInner(carrier: Carrier, places: Places, { media, low, high }: InnerFlows, step: FilterStep): void {
  const { before, after, time } = step;
  const { plenum, tanks } = places;
  const grows = (after.pore - before.pore) / time;
  tanks.forEach((tank, i) => {
    carrier.flow(i === 0 ? plenum : tanks[i - 1], tank, media - (i / tanks.length) * grows);
  });
  toFree(carrier, places, tanks[tanks.length - 1], places.through, media - grows);
  if (low > 0) carrier.flow(plenum, places.intoLow, low);
  if (high < 0) for (const kind of freeKinds(places)) carrier.flow(kind, places.intoHigh, -high);
  toFree(carrier, places, places.beside, places.other, -(after.beside - before.beside) / time);
}

/** Water into the free water, or back out of it. */
function toFree(carrier: Carrier, places: Places, place: number, kind: number, q: number): void {
  if (q >= 0) carrier.flow(place, kind, q);
  else for (const own of freeKinds(places)) carrier.flow(own, place, -q);
}

/** What the gap gives in a step, m³: taken out before it, and owed where it holds less than it has to give. */
export interface GapOwes {
  readonly low: number;
  readonly high: number;
}

/** Lets the gap's dye out at an even rate over the step. */
export function emptyGap(
  carrier: Carrier,
  places: Places,
  plug: Plug,
  { low, high }: InnerFlows,
  mass: Float64Array,
  time: number,
): GapOwes {
  const up = plug.take(Math.max(0, high * time), 'high');
  const down = plug.take(Math.max(0, -low * time), 'low');
  mass[places.outOfHigh] = up.mass;
  mass[places.outOfLow] = down.mass;
  // Places of a cubic meter that give 1/time of themselves: all of it in the step.
  carrier.count(places.outOfHigh, places.round, 1 / time);
  carrier.count(places.outOfLow, places.plenum, 1 / time);
  return { low: Math.max(0, -low * time - down.volume), high: Math.max(0, high * time - up.volume) };
}

/** Puts into the gap what went into it over the step, and lets out what it still owes. */
export function fillGap(
  places: Places,
  plug: Plug,
  { low, high }: InnerFlows,
  owes: GapOwes,
  mass: Float64Array,
  time: number,
): void {
  plug.put(Math.max(0, low * time), mass[places.intoLow], 'low');
  plug.put(Math.max(0, -high * time), mass[places.intoHigh], 'high');
  mass[places.round] += plug.take(owes.high, 'high').mass;
  mass[places.plenum] += plug.take(owes.low, 'low').mass;
  for (const place of [places.intoLow, places.intoHigh, places.outOfLow, places.outOfHigh]) mass[place] = 0;
}
