/** What is seen in the filter, and why, in three or four sentences that change with it. */
import { type Display, formatDuration, formatFine, formatFlow, formatPercent } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';
import { type Passage, passageAt, STILL } from './passage.ts';

/** A bottom feed under this does not feed a filter, m³/s. */
const UNFED = 1e-5;
/** A share under this is told as hardly anything. */
const HARDLY = 0.005;
/** Deposit is told as the cause where it makes the head so many times that of clean media. */
const SILTED = 1.3;
/** A bed that asks less head than this hardly resists, m. */
const COARSE = 2e-3;
/** One way is told as quicker than the other from this ratio of times on. */
const QUICKER = 1.15;

export interface Seen {
  readonly scenario: Scenario;
  readonly moment: Moment;
  /** Porosity that the deposit leaves of each layer; clean where undefined. */
  readonly porosities?: readonly number[] | undefined;
}

/** Sentences of the present moment; where nothing can be seen, what follows from that. */
export function explanation({ scenario: s, moment, porosities }: Seen): string[] {
  const nothing = withoutPassage(s, moment);
  if (nothing) return nothing;
  const passage = passageAt(s, moment, porosities);
  if (!passage) return [];
  if (!passage.up) return backwards(passage, s.display);
  return [
    whySlips(passage, s),
    timesWords(passage),
    liftWords(passage, moment, s.display),
    pastWords(s, moment),
  ].filter((sentence) => sentence !== '');
}

/** No filter, no media, or no water that goes up through them. */
function withoutPassage(s: Scenario, { flows, levels }: Moment): string[] | undefined {
  const { filter, plumbing } = s;
  if (!filter)
    return [
      'This site has no filter: the pump lifts its water straight to the water course, and nothing is held back from it.',
    ];
  if (!filter.media)
    return [
      'The filter has no media: its water is lifted over the lip as it came, and nothing is held back from it.',
      'Give it layers with a thickness, a porosity and a grain to see what goes through them and what goes round.',
    ];
  if (!plumbing.bottomFeed)
    return [
      'No pipe leads under the rack: what the top feed brings runs over the media to the lip, and they do nothing.',
    ];
  if (Math.abs(flows['bottom feed'] ?? 0) >= UNFED) return undefined;
  const main = flows['main'] ?? 0;
  const level = levels['filter'] ?? filter.media.bottom;
  const wet =
    level > filter.media.bottom
      ? 'The water among the media stands, and what lives on them has the air of this water alone.'
      : 'The media lie dry.';
  if (main > UNFED)
    return [
      'No water goes under the rack: all that the pump lifts goes up the top feed, past the media.',
      `${wet} Open the bottom feed’s valve to feed them.`,
    ];
  if (plumbing.bottomFeed.valve <= 0 && (plumbing.topFeed?.valve ?? 0) <= 0) {
    const shut = plumbing.topFeed ? 'Both valves are shut' : 'The only valve is shut';
    return [
      `${shut}, so no water moves, whether the pump runs or not. A pump left on like that heats what stands in it.`,
      wet,
    ];
  }
  return ['The pump stands, so nothing goes up through the media and no mark runs.', wet];
}

function backwards(passage: Passage, display: Display): string[] {
  const { through, round, share } = passage;
  return [
    `The water runs back: ${formatFlow(through + round, display)} go down through the media and out by the bottom feed.`,
    share === undefined ? '' : `${formatPercent(share)} of it goes down beside the media.`,
    'Downward flow presses the media on their rack; what had settled low in them is washed out below.',
  ].filter((sentence) => sentence !== '');
}

function whySlips(passage: Passage, s: Scenario): string {
  const { share = 0, gap, head, clean, lift } = passage;
  const { display } = s;
  const slips = `${formatPercent(share)} of the bottom feed slips round the sides`;
  const wide = formatFine(gap, display);
  const doubt = bandWords(passage, s);
  const rest = s.filter?.media?.gap ?? 0;
  if (rest <= 0 && head < lift) return `Nothing slips round the sides: media and wall are given no gap.${doubt}`;
  if (head >= lift)
    return `${slips}, because ${formatFine(head, display)} of head have lifted the media and the gap beside them has opened from ${formatFine(rest, display)} to ${wide}.${doubt}`;
  if (head > SILTED * clean)
    return `${slips}, because deposit holds the water back: the bed asks ${formatFine(head, display)} of head, clean it would ask ${formatFine(clean, display)}, and that drives this much up a gap of ${wide}.${doubt}`;
  if (share < HARDLY)
    return `Hardly anything slips round the sides (${formatPercent(share)}), because a gap of ${wide} is so narrow that it holds the water back more than the media do.${doubt}`;
  const asks =
    head < Math.min(COARSE, 0.3 * lift)
      ? 'The media hardly resist: the gap decides.'
      : 'The more the media resist, the more goes round.';
  return `${slips}, because ${formatFine(head, display)} of head, all that the bed asks, drives this much up a gap of ${wide}. ${asks}${doubt}`;
}

/** What the share would be at either end of what nobody has measured. */
function bandWords(passage: Passage, { assumed, display }: Scenario): string {
  const band = assumed.find(({ place }) => place === 'filter.media.gap')?.band;
  if (!band) return '';
  const [low, high] = band;
  const [least, most] = [low, high].map((gap) => passage.shareAt(gap));
  const atLeast =
    low > 0
      ? `at ${formatFine(low, display)} ${formatPercent(least)} would`
      : least < HARDLY
        ? 'without one nothing would'
        : `without one still ${formatPercent(least)} would, since the media float`;
  return ` Nobody has measured that gap: ${atLeast}, at ${formatFine(high, display)} ${formatPercent(most)}.`;
}

function timesWords({ throughTime, roundTime, share = 0 }: Passage): string {
  if (throughTime === undefined) return '';
  const among = formatDuration(throughTime);
  if (roundTime === undefined || share <= 0) return `The water takes ${among} through the media.`;
  const beside = formatDuration(roundTime);
  if (roundTime > QUICKER * throughTime)
    return `Water in the gap is slower than among the media, ${beside} against ${among}: it goes round untreated, not fast.`;
  if (throughTime > QUICKER * roundTime)
    return `Water in the gap overtakes, ${beside} against ${among} among the media: what goes round is over the lip first.`;
  return `Water in the gap takes about as long as among the media, ${beside} against ${among}; it is only untreated.`;
}

function liftWords({ head, lift, onset, through, round }: Passage, { flows }: Moment, display: Display): string {
  if (!Number.isFinite(onset)) return '';
  const now = through + round;
  if (head >= lift)
    return `The media float: ${formatFine(head, display)} of head stand against ${formatFine(lift, display)} that lift them, and more flow widens the gap instead of going through. How far they rise is not computed.`;
  const feed = Math.abs(flows['bottom feed'] ?? now);
  return `The media would float up from ${formatFlow(onset, display, feed)} of bottom feed; now it brings ${formatFlow(feed, display)}, ${formatPercent(now / onset)} of that.`;
}

function pastWords({ plumbing, display }: Scenario, { flows }: Moment): string {
  const past = flows['top feed'] ?? 0;
  if (!plumbing.topFeed) return '';
  if (past < STILL) return 'The top feed is shut: all that is lifted goes under the rack.';
  const main = flows['main'] ?? 0;
  const part = main > UNFED ? `, ${formatPercent(past / main)} of what the pump lifts,` : '';
  return `The top feed takes ${formatFlow(past, display)}${part} past the media, untreated.`;
}
