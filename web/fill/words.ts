/** A fill in sentences: what is done to the hose, how much runs in, and what becomes of it upstairs. */
import type { FillPlan } from '../../sim/fill/plan.ts';
import { meterText, neverWords } from '../../sim/fill/words.ts';
import { type Display, formatDuration, formatLength, formatVolume } from '../../sim/quantity/index.ts';
import type { FillMore, FillPlanned } from '../engine/fill-asked.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { type ClockWords, clockText, clockWords } from './clock.ts';

export interface FillSeen {
  readonly planned: FillPlanned;
  readonly more: FillMore | undefined;
  readonly display: Display;
  readonly zone: string | undefined;
  /** Lowest point of the pond's edge, m. */
  readonly edge: number;
}

/** The answer as it stands largest: a lead, and the clock under it where there is one. */
export interface FillAnswer {
  readonly lead: string;
  readonly clock: ClockWords | undefined;
}

const length = (m: number, display: Display): string => trueFractions(formatLength(m, display));

/** A moment of the plan by the wall; its day is named where it is another than that of the opening. */
export function sayer({ planned: { plan }, display, zone }: FillSeen): (t: number) => string {
  return (t) => (plan ? clockText(clockWords(plan.starts, t, display, zone, plan.open?.t ?? 0)) : 'never');
}

export function fillAnswer({ planned: { plan, opening }, display, zone }: FillSeen): FillAnswer {
  if (plan === null) return { lead: 'Give it a hose that runs: then its hour can be told.', clock: undefined };
  if (plan.full === null) return { lead: `It is ${neverWords(plan.never ?? 'weak')}.`, clock: undefined };
  if (plan.full.t === 0) return { lead: 'It is full already: the pond stands at its fill mark.', clock: undefined };
  const clock = (t: number): ClockWords => clockWords(plan.starts, t, display, zone, plan.open?.t ?? 0);
  if (opening !== null && typeof opening.open === 'number')
    return { lead: 'Open the hose at', clock: clockWords(plan.starts, opening.open, display, zone) };
  return { lead: plan.hoses.length > 1 ? 'Shut the hoses at' : 'Shut the hose at', clock: clock(plan.full.t) };
}

/** What follows the clock, sentence by sentence. */
export function fillSentences(seen: FillSeen): string[] {
  const { planned, more, display } = seen;
  const { plan, opening } = planned;
  const clock = sayer(seen);
  if (plan === null || plan.full === null || plan.full.t === 0 || plan.volume === null) return [];
  const moved = more?.band?.most === undefined ? '' : `, moved most by ${more.band.most}`;
  const give = more?.band ? `, give or take ${formatDuration(roundedBand(more.band.band))}${moved}` : '';
  const from = plan.open ? ` from ${clock(plan.open.t)}` : '';
  const begin =
    opening === null
      ? `${formatVolume(plan.volume, display)}${from}${give}.`
      : `${formatVolume(plan.volume, display)}${give}.`;
  return [...openingSentences(seen), begin, ...meterSentences(plan, display), standsSentence(seen, plan)];
}

/** A band to the minute, or to ten of them where it is long. */
function roundedBand(band: number): number {
  const step = band > 7200 ? 600 : 60;
  return Math.max(60, Math.ceil(band / step - 0.5) * step);
}

function openingSentences(seen: FillSeen): string[] {
  const { plan, opening } = seen.planned;
  if (opening === null || !plan?.full) return [];
  const shut = sayer(seen)(plan.full.t);
  if (typeof opening.open === 'number') return [`Shut it at ${shut}.`];
  return ['There is too little time until that hour: this is the earliest, the hose opened at once.'];
}

function meterSentences(plan: FillPlan, display: Display): string[] {
  const several = plan.hoses.length > 1;
  return plan.hoses.flatMap(({ name, meter }) =>
    meter === null ? [] : [`The meter${several ? ` of ‘${name}’` : ''} then reads ${meterText(meter, display)}.`],
  );
}

/** A loss under this share of what runs in is not told. */
const WORTH_TELLING = 0.01;

function standsSentence({ display, edge }: FillSeen, { fillMark, lost, volume }: FillPlan): string {
  const stands = `The water then stands ${length(edge - fillMark, display)} below the edge.`;
  return lost !== null && volume !== null && lost > WORTH_TELLING * volume
    ? `${stands} ${formatVolume(lost, display)} are lost to air and ground meanwhile.`
    : stands;
}

/** 'Then the pump': it falls so far, so much is added, and only then the mark. */
export function pumpSentences(seen: FillSeen): string[] {
  const { more, display } = seen;
  const upstairs = more?.pumped?.upstairs;
  if (!more?.pumped || !upstairs) return [];
  if (upstairs.starves)
    return [
      'Then the pump: it draws air before filter, pools and pipes are full. Stop it, let the pond come up and start it again.',
    ];
  const shut = upstairs.fallsShut === null ? '' : ` (${length(upstairs.fallsShut, display)} with the hose shut)`;
  const falls = `Then the pump, the hose still running: the pond falls ${length(upstairs.falls, display)}${shut} while filter, pools, streams and pipes fill.`;
  const air = upstairs.starvesShut ? ' With the hose shut the pump would draw air.' : '';
  const { full } = more.pumped;
  if (full === null || upstairs.more === null || upstairs.lasts === null)
    return [`${falls}${air}`, `With the pump running the pond is ${neverWords(more.pumped.never ?? 'weak')}.`];
  const again = clockText(clockWords(more.pumped.starts, full.t, display, seen.zone, more.pumped.open?.t ?? 0));
  return [
    `${falls}${air}`,
    `Let ${formatVolume(upstairs.more, display)} more run in, ${formatDuration(upstairs.lasts)}: at ${again} it stands at the fill mark again. Only then draw the mark.`,
  ];
}
