import type { Balance } from '../../balance.ts';
import { GRAVITY } from '../../laws/constants.ts';
import { porositiesAtStart } from '../../network/clogging.ts';
import { liftOnset } from '../../network/media.ts';
import { formatFine, formatFlow, formatLength, formatNumber, formatPercent } from '../../quantity/index.ts';
import type { Filter, Media, Scenario } from '../../scenario/scenario.ts';
import type { Check } from '../answer.ts';
import { bandsOf, restsOn } from './bands.ts';
import { type CheckInput, judgeAtMost, judged, type Marks, originWords, told, waysSentence, worse } from './check.ts';
import { MOST_CHANNELED } from './limits.ts';
import { balanceOf, leastSteps } from './variants.ts';

/** Clean media's head is good to this share of it (Ergun's correlation against beds of other shapes). */
const HEAD_BAND = 0.3;
/** Steps in which a gap (0.5 mm, 0.01 in), a valve's opening and a weight (1 kg, 2 lb) are looked for: m, −, N. */
const GAP_STEP = { metric: 5e-4, us: 2.54e-4 };
const WIDEST_GAP = 0.03;
const TURN = 0.05;
const POUND = 0.45359237;
const WEIGHT = { metric: GRAVITY, us: 2 * POUND * GRAVITY };
const MOST_WEIGHTS = 100;
/** A part of the lift head below this is told as hardly any, −. */
const HARDLY = 0.005;

interface Share {
  readonly share: number;
  /** Head across the media over the head at which they float up. */
  readonly lift: number;
}

function shareIn(balance: Balance | undefined): Share | undefined {
  const channeled = balance?.answer.channeled;
  const lift = balance?.answer.lift;
  return channeled === null || channeled === undefined || lift === null || lift === undefined
    ? undefined
    : { share: channeled, lift };
}

function withMedia(s: Scenario, change: Partial<Media>): Scenario {
  return s.filter?.media ? { ...s, filter: { ...s.filter, media: { ...s.filter.media, ...change } } } : s;
}

/** What of the bottom feed's water slips round the media, and how near the media are to floating up. */
export function channelingCheck({ scenario, balance }: CheckInput): Check | undefined {
  const media = scenario.filter?.media;
  if (!balance || !media || !scenario.plumbing.bottomFeed) return undefined;
  const now = shareIn(balance);
  if (!now) {
    const says = 'No water goes up through the media, so none slips round them.';
    return told({ name: 'channeling', value: null, unit: '', says });
  }
  const given = scenario.limits.channeling;
  const limit = given ?? MOST_CHANNELED;
  const marks: Marks = { fail: limit, pass: limit, origin: given === undefined ? 'our default' : 'file' };
  const model = HEAD_BAND * now.share * (1 - now.share);
  let mostLift = now.lift;
  const both = (s: Scenario): (number | undefined)[] => {
    const there = shareIn(balanceOf(s));
    mostLift = Math.max(mostLift, there?.lift ?? 0);
    return [there?.share, there?.lift];
  };
  const [found, lifting] = bandsOf(scenario, both, [model, HEAD_BAND * now.lift]);
  const { band } = found;
  const shareVerdict = judgeAtMost(now.share, band, marks);
  const judgedLift = judgeAtMost(now.lift, lifting.band, { fail: 1, pass: 1, origin: 'our default' });
  // Floating media hold their head near that which lifts them, so that half the way to there would not tell of it.
  const liftVerdict = judgedLift === 'pass' && mostLift >= 1 ? 'tight' : judgedLift;
  const liftWords = liftSays(scenario, balance, now, liftVerdict);
  return judged({
    name: 'channeling',
    verdict: worse(shareVerdict, liftVerdict),
    value: now.share,
    limit,
    margin: limit - now.share,
    band,
    rests: restsOn(found),
    unit: '',
    origin: marks.origin,
    says: [
      shareSays(scenario, media, now),
      limitSays(marks),
      liftWords,
      besideSays(scenario, media, balance, now),
    ].join(' '),
    mend: waysSentence([
      ...(shareVerdict === 'pass' ? [] : gapMend(scenario, media, limit)),
      ...(liftVerdict === 'fail' ? liftMends(scenario, media) : []),
    ]),
    places: [
      { name: 'lift', verdict: liftVerdict, value: now.lift, says: liftWords },
      onsetPlace(scenario, media, balance, now),
    ],
  });
}

function shareSays(s: Scenario, media: Media, { share }: Share): string {
  const says =
    `The channeled share is ${formatPercent(share)}: so much of what comes up the bottom feed slips through the gap ` +
    `round the mats, ${formatFine(media.gap, s.display)} wide.`;
  const assumed = s.assumed.find(({ place }) => place === 'filter.media.gap')?.band;
  if (!assumed) return says;
  const [low, high] = assumed.map((gap) => shareIn(balanceOf(withMedia(s, { gap })))?.share ?? 0);
  const [narrow, wide] = assumed.map((gap) => formatFine(gap, s.display));
  return (
    `${says} Nobody has measured that gap: from ${narrow} to ${wide} the share goes from ${formatPercent(low)} to ` +
    `${formatPercent(high)}.`
  );
}

function limitSays({ fail, origin }: Marks): string {
  return `At most ${formatPercent(fail)} is wanted (${originWords(origin)}).`;
}

function liftSays(
  { display }: Scenario,
  { answer, network }: Balance,
  { lift }: Share,
  verdict: Check['verdict'],
): string {
  const { liftHead } = network.parts.circuit.feeds;
  const head = answer.mediaHead ?? 0;
  const heads = `they cost ${formatFine(head, display)} of head and float up at ${formatFine(liftHead, display)}`;
  return lift >= 1
    ? `The media float up: ${heads}, and the gap round them opens.`
    : `The media stay down: ${heads}${verdict === 'tight' ? ', too near to be sure' : ''}.`;
}

/** The flow at which clean media float up, m³/s, beside the present one. */
function onsetPlace(s: Scenario, media: Media, { answer }: Balance, { lift }: Share): Check['places'][number] {
  const onset = liftOnset(media, s.water.temperature);
  const feed = answer.flows['bottom feed'];
  const [most, now] = [onset, feed].map((flow) => formatFlow(flow, s.display, feed));
  const says =
    `Clean and under water the media float up from ${most} in the bottom feed; now it brings ${now}, and the head ` +
    (lift >= 1
      ? 'is past what lifts them.'
      : `keeps ${lift < HARDLY ? 'nearly all' : formatPercent(1 - lift)} of what lifts them in hand.`);
  return { name: 'lift onset', verdict: 'told', value: onset, says };
}

/** Where the rule 'too much pump makes it channel' misleads, and what is not computed. */
function besideSays(
  { display, filter }: Scenario,
  media: Media,
  { answer, network }: Balance,
  { lift }: Share,
): string {
  const { liftHead } = network.parts.circuit.feeds;
  const { flows, duty } = answer;
  const jet = duty.velocity['bottom feed'] ** 2 / (2 * GRAVITY);
  const slow =
    filter !== undefined && flows.gap > 0 && waterSpeed(filter, media, flows.media) > gapSpeed(media, flows.gap);
  return [
    lift < 1 ? 'Until they float, the share hardly changes with the flow: the gap decides it.' : '',
    slow ? 'Water in the gap runs slower than in the media: it goes round untreated, not fast.' : '',
    jet > liftHead
      ? `Not computed: the jet at the bottom inlet, ${formatLength(jet, display)} of velocity head where nothing spreads it.`
      : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** Mean speed in the pores and in the gap, m/s. */
function waterSpeed(filter: Filter, { area, layers }: Media, flow: number): number {
  const porosity = porositiesAtStart(filter);
  const thickness = layers.reduce((sum, l) => sum + l.thickness, 0);
  const pores = layers.reduce((sum, l, i) => sum + l.thickness * porosity[i], 0);
  return (flow / area) * (thickness / pores);
}

function gapSpeed({ perimeter, gap }: Media, flow: number): number {
  return gap > 0 ? flow / (perimeter * gap) : 0;
}

/** The widest gap that keeps the limit. */
function gapMend(s: Scenario, media: Media, limit: number): string[] {
  const share = (gap: number): number => shareIn(balanceOf(withMedia(s, { gap })))?.share ?? 0;
  const step = GAP_STEP[s.display];
  const over = leastSteps((n) => share(n * step) > limit, Math.round(WIDEST_GAP / step));
  if (over === undefined || over === 1) return [];
  const widest = (over - 1) * step;
  const text = formatFine(widest, s.display);
  return widest < media.gap
    ? [`close the gap round the mats to ${text}`]
    : [`measure the gap: up to ${text} the share stays within the limit`];
}

/** What keeps the media down: the bottom valve further closed, or more weight on them. */
function liftMends(s: Scenario, media: Media): string[] {
  const stays = (changed: Scenario): boolean => (shareIn(balanceOf(changed))?.lift ?? 1) < 1;
  const ways: string[] = [];
  const { bottomFeed } = s.plumbing;
  if (bottomFeed) {
    const opening = (n: number): number => bottomFeed.valve - n * TURN;
    const turned = (n: number): Scenario => ({
      ...s,
      plumbing: { ...s.plumbing, bottomFeed: { ...bottomFeed, valve: opening(n) } },
    });
    const most = Math.ceil(bottomFeed.valve / TURN - 1e-9) - 1;
    const turns = most > 0 ? leastSteps((n) => stays(turned(n)), most) : undefined;
    if (turns !== undefined)
      ways.push(`turn the handle of the bottom valve to ${formatNumber(90 * (1 - opening(turns)))}° closed`);
  }
  const held = (n: number): Scenario => withMedia(s, { holdDown: media.holdDown + n * WEIGHT[s.display] });
  const weights = leastSteps((n) => stays(held(n)), MOST_WEIGHTS);
  if (weights !== undefined) {
    const text = s.display === 'us' ? `${2 * weights} lb` : `${weights} kg`;
    ways.push(`hold the media down with ${text} more, weighed under water`);
  }
  return ways;
}
