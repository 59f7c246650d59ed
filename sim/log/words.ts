/** What a log of levels came to, in sentences. Pure. */
import { type Display, formatClock, formatLevel, formatNumber, formatVolume, momentText } from '../quantity/index.ts';
import type { Banded } from '../readings/readBack.ts';
import { EVAPORATION_OFF, EVAPORATION_UNKNOWN } from './facts.ts';
import { lookWords } from './look.ts';
import type { LeakAnswer } from './said.ts';

const DAY = 86400;
const INCH = 0.0254;

/** 'at 3.4 mm a day', '0.13 in a day'. */
export function rateWords(rate: number, display: Display): string {
  return `${rateFigure(rate, display)} a day`;
}

function rateFigure(rate: number, display: Display): string {
  const day = Math.max(0, rate) * DAY;
  if (display === 'us') return `${formatNumber(day / INCH, 2)} in`;
  const mm = 1000 * day;
  return `${formatNumber(mm, mm < 9.95 ? 1 : 0)} mm`;
}

function bandWords({ band: [low, high] }: Banded, figure: (value: number) => string): string {
  const unit = / [^ ]+$/;
  return `${figure(Math.max(0, low)).replace(unit, '')} to ${figure(high)}`;
}

/** The first sentence: whether it loses, and how much. */
export function leadWords(answer: LeakAnswer, display: Display): string {
  const { verdict, loss, flow, hole, most, limit } = answer;
  if (verdict === 'loses') {
    const volume = (value: number): string => formatVolume(value * DAY, display);
    const first = hole ? 'At first it lost' : 'It loses';
    return (
      `${first} ${rateWords(loss.value, display)} more than evaporation and splash explain: some ${volume(flow.value)} ` +
      `a day (${bandWords(flow, volume)}, nine times in ten).`
    );
  }
  if (verdict === 'holds')
    return (
      `No leak that this log could show: less than ${rateWords(Math.max(most, 0), display)}, if any. One of ` +
      `${rateWords(limit, display)} or more would show.`
    );
  if (verdict === 'gains')
    return (
      `The level falls by ${rateWords(-loss.value, display)} less than evaporation and splash would make it: water runs in ` +
      'that the log does not tell of, or less evaporates than is reckoned.'
    );
  return `This log cannot tell: from nothing up to ${rateWords(most, display)} may be lost beside evaporation and splash.`;
}

/** What follows from it, sentence by sentence. */
export function restWords(answer: LeakAnswer, display: Display): string[] {
  const { verdict } = answer;
  return [
    ...(verdict === 'loses' ? [...whereWords(answer, display), ...holeWords(answer, display)] : []),
    ...(verdict === 'cannot tell' ? [moreWords(answer)] : []),
    ...(verdict === 'gains' && answer.plot.sign < 0 && answer.plot.dots.every(({ level }) => level >= -0.001)
      ? [
          'Was it read on a ruler that stands in the water, where a greater figure is a higher level? Then say so above.',
        ]
      : []),
    evaporationWords(answer, display),
    ...(answer.scatter > 1
      ? [
          `The readings scatter ${formatNumber(answer.scatter, 1)} times as much as a careful ruler’s; the ranges allow for it.`,
        ]
      : []),
    ...cautionWords(answer),
  ];
}

function whereWords({ where, standing, running, pumpTimes, hole }: LeakAnswer, display: Display): string[] {
  const figure = ({ value }: Banded): string => rateWords(value, display);
  const look = lookWords(where, hole !== undefined);
  if (where === 'falls' && standing && running)
    return [`With the pump off it holds (less than ${rateWords(standing.band[1], display)}), so ${look}`];
  if (where === 'pond' && standing) return [`It loses ${figure(standing)} with the pump off as well, so ${look}`];
  if (where === 'both' && standing && running)
    return [`With the pump off it loses ${figure(standing)}, and the running pump adds ${figure(running)}: ${look}`];
  if (pumpTimes.on && pumpTimes.off)
    return [
      'Whether the pond or the falls and the stream lose it, the log cannot tell yet: leave the pump off for a day more.',
    ];
  return [
    pumpTimes.on
      ? 'Leave the pump off for a day, and note the level an hour after it stopped and again before it starts: if the pond holds then, look at the falls and the stream first.'
      : `All of this was lost with the pump off: ${look}`,
  ];
}

function holeWords({ hole, plot, gain }: LeakAnswer, display: Display): string[] {
  if (hole) {
    const at = (below: number): string => formatLevel(plot.zero - plot.sign * below, display);
    const [near, far] = hole.band.map(at);
    const where = plot.sign < 0 ? 'below the edge' : 'on the ruler';
    return [
      `It loses less as the level sinks, and would stop at about ${at(hole.value)} ${where} (${near} to ${far}): look all round at that height.`,
    ];
  }
  if (gain === undefined) return ['Whether it falls more slowly as it sinks, so few readings cannot tell.'];
  return gain > -2
    ? ['Whether it falls more slowly as it sinks, the log cannot tell: let it fall farther without adding water.']
    : [];
}

function moreWords({ decides, facts, plot }: LeakAnswer): string {
  const last = plot.dots.at(-1)?.t ?? 0;
  if (decides === undefined)
    return (
      'More readings alone would not decide it, for what evaporates is not known well enough: stand a bucket of pond water in the ' +
      'shallows, note how much it falls, and write that as a line, ‘evaporation 3 to 4 mm/d’.'
    );
  const days = Math.round(decides / DAY);
  const when = facts.dated
    ? `on ${formatClock(facts.starts, last + decides).replace(/ \d{2}:\d{2}$/, '')}`
    : days === 1
      ? 'a day later'
      : `${days} days later`;
  return `One reading more ${when} would decide it, if no water is added until then and the loss stays as it is.`;
}

const FROM = {
  log: 'as the log says',
  site: `the site’s figure, give or take ${100 * EVAPORATION_OFF} %`,
} as const;

function evaporationWords({ evaporation }: LeakAnswer, display: Display): string {
  const { from } = evaporation;
  const open = rateWords(evaporation.value, display);
  if (from !== 'unknown') return `Evaporation is reckoned at ${open} from open water, ${FROM[from]}.`;
  const [low, , high] = EVAPORATION_UNKNOWN;
  return (
    `The site says nothing of evaporation: anything from ${rateFigure(low, display)} to ${rateWords(high, display)} is taken to ` +
    'be possible (common practice). A figure for the weather, or a line ‘evaporation 3 to 4 mm/d’ by a bucket of pond water, makes this sharper.'
  );
}

function cautionWords({ verdict, facts }: LeakAnswer): string[] {
  return [
    ...(facts.autofill
      ? ['The site has an autofill: shut it while the level is watched, or it hides what is lost.']
      : []),
    ...(facts.silent ? ['No line says how the pump stood: it is taken to have run all the time.'] : []),
    ...(facts.noons ? ['Lines without a time of day are taken as noon.'] : []),
    ...(verdict === 'loses'
      ? [
          'Roots, soil or liner that touch the water over the edge wick it away, and look like a leak: look there before you dig.',
        ]
      : []),
  ];
}

/** What does not go with the rest, each with the line it stands in. */
export function besideWords({ beside, plot }: LeakAnswer, display: Display): { line: number; says: string }[] {
  const length = (value: number): string => formatLevel(Math.abs(value), display);
  return beside.map(({ kind, line, from, off }) => {
    if (kind === 'stray') {
      const dot = plot.dots.find((each) => each.line === line);
      const should = plot.zero + plot.sign * ((dot?.level ?? 0) - off);
      const figure = formatLevel(should, display);
      return { line, says: `does not go with the others, which make it about ${figure}: left out. Was it misread?` };
    }
    const how = off > 0 ? 'rose' : 'fell';
    const why =
      off > 0
        ? 'though no rain or added water is noted: taken as water that came in'
        : 'at once: taken as water that was let out';
    return { line, says: `since line ${from} the pond ${how} by about ${length(off)} beside the rest, ${why}.` };
  });
}

/** The clock or the time since the start of a reading, for a plot or a table. */
export function whenWords({ facts }: LeakAnswer, t: number): string {
  if (!facts.dated) return `${formatNumber(t / DAY, 1)} d`;
  return momentText(facts.starts, t).slice(0, 16).replace('T', ' ');
}
