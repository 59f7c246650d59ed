/** The lesson on channeling: what each step sets in the teaching site, and what it says of the water as it then runs. */
import { porosityLeft } from '../../sim/laws/deposit.ts';
import { formatDuration, formatFlow, formatLength, formatPercent, formatVolume } from '../../sim/quantity/index.ts';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import type { Media, Scenario } from '../../sim/scenario/scenario.ts';
import type { FileEdits } from '../engine/protocol.ts';

/** The site that the lesson is about, by its file's name. */
export const TEACHING_SITE = 'teaching-filter';

/** A step as it stands on the site: its filter running. */
export interface Taught {
  readonly scenario: Scenario;
  readonly balance: BalanceAnswer;
  readonly media: Media;
}

export interface Step {
  readonly title: string;
  /** Everything that any step sets, so that the steps may be taken in any order. */
  readonly edits: FileEdits;
  readonly says: (taught: Taught) => readonly string[];
  /** What a class may be asked before the next step is taken. */
  readonly asks: string;
}

interface Setting {
  readonly bottom: number;
  readonly top: number;
  readonly gap: string;
  /** Fine muck settled in the fine mat. */
  readonly muck: string;
}

const HALF = { bottom: 0.5, top: 0.5 };
const ALL_UP = { bottom: 1, top: 0 };
const GENTLE = { bottom: 0.4, top: 1 };
const CLEAN = { gap: '2.5 mm', muck: '0 L' };
const CLOGGED = { gap: '2.5 mm', muck: '4 L' };

const edits = ({ bottom, top, gap, muck }: Setting): FileEdits => [
  ['plumbing.bottomFeed.valve', bottom],
  ['plumbing.topFeed.valve', top],
  ['filter.media.gap', gap],
  ['filter.media.layers[0].deposit', muck],
];

const flow = ({ scenario, balance }: Taught, name: string): string =>
  formatFlow(balance.flows[name] ?? 0, scenario.display);
const share = ({ balance }: Taught): string => formatPercent(balance.channeled ?? 0);
const gapOf = ({ scenario, media }: Taught): string =>
  scenario.display === 'us' ? `${(media.gap / 0.0254).toFixed(2)} in` : `${Number((media.gap * 1000).toFixed(1))} mm`;
const head = ({ scenario, balance }: Taught): string => formatLength(balance.mediaHead ?? 0, scenario.display);
const floatsAt = ({ scenario, balance }: Taught): string =>
  formatLength((balance.mediaHead ?? 0) / (balance.lift || 1), scenario.display);
const stays = ({ balance }: Taught): string =>
  balance.contact ? formatDuration(balance.contact.pore) : 'no time at all';
/** What the muck leaves of the fine mat's pores. */
const pores = ({ media: { area, layers } }: Taught): string => {
  const [{ porosity, beta, deposit, thickness }] = layers;
  return formatPercent(porosityLeft(porosity, beta, deposit / (area * thickness)));
};
const muck = ({ scenario, media }: Taught): string => formatVolume(media.layers[0].deposit, scenario.display);
const floats = ({ balance }: Taught): boolean => (balance.lift ?? 0) >= 1;

export const STEPS: readonly Step[] = [
  {
    title: 'Two ways through a filter',
    edits: edits({ ...HALF, ...CLEAN }),
    says: (at) => [
      `At the tee the water parts: ${flow(at, 'bottom feed')} come up through the filter from below, ${flow(at, 'top feed')} are dumped on top and never see the media.`,
      `What comes up has two ways: through the media, and through the gap between the mats and the wall, here ${gapOf(at)} wide. Of it, ${share(at)} slip round. That is the channeled share.`,
      `In the pores the water stays ${stays(at)}: so long the media have for their work.`,
    ],
    asks: 'What will happen to the channeled share if all the pump’s water is sent up from below?',
  },
  {
    title: 'More water from below',
    edits: edits({ ...ALL_UP, ...CLEAN }),
    says: (at) => [
      `The top feed is shut, and ${flow(at, 'bottom feed')} go up. The channeled share is ${share(at)}.`,
      'Both ways take more, each by nearly as much: clean, coarse media hardly resist, so more flow does not push the water round them.',
      `What does change is the time. In the pores the water now stays ${stays(at)}.`,
    ],
    asks: 'What else could send the water round the sides, if not the flow?',
  },
  {
    title: 'The gap decides',
    edits: edits({ ...HALF, gap: '15 mm', muck: '0 L' }),
    says: (at) => [
      `Valves and media are as in the first step; only the gap is wider, ${gapOf(at)}. Now ${share(at)} of what comes up slip round.`,
      'Water between two walls runs by the cube of their distance as long as it runs quietly. Nobody sees this gap from above, and few people have measured it: any figure for the channeled share is only as good as that measurement.',
      'The mend is made by hand: cut the mats full, press them to the wall, close the gap with a strip of mat.',
    ],
    asks: 'The gap is as narrow as before. What does a season without cleaning do?',
  },
  {
    title: 'A season of fine muck',
    edits: edits({ ...HALF, ...CLOGGED }),
    says: (at) => [
      `Fine muck, ${muck(at)} of it, has settled in the fine mat: of its space, ${pores(at)} are still pores. The media now cost ${head(at)} of head.`,
      `The gap costs what it always did, so the water goes there: ${share(at)} slip round, with the same valves and the same gap as in the first step.`,
      `In the pores that are left the water stays ${stays(at)}, but less of it passes there.`,
    ],
    asks: 'The filter seems slow. Somebody opens the bottom valve wide and shuts the top one. What happens?',
  },
  {
    title: 'Pushed',
    edits: edits({ ...ALL_UP, ...CLOGGED }),
    says: (at) => [
      `All of it goes up: ${flow(at, 'bottom feed')}. The media would cost more head than the ${floatsAt(at)} at which they float up.`,
      floats(at)
        ? `So they float, and the gap opens by itself: ${share(at)} slip round. Pushing harder opens it further; the head stays at ${head(at)}.`
        : `They still lie: ${share(at)} slip round.`,
      'This is where ‘too much pump makes it channel’ is true: with fine or clogged media, and only past the point at which they lift.',
    ],
    asks: 'Which valve would you turn, and what would it mend?',
  },
  {
    title: 'Gently, the rest over the top',
    edits: edits({ ...GENTLE, ...CLOGGED }),
    says: (at) => [
      `The top feed takes ${flow(at, 'top feed')} now, and ${flow(at, 'bottom feed')} come up. The media cost ${head(at)}, and ${floats(at) ? 'still float' : 'lie still'}.`,
      `But ${share(at)} still slip round: a valve keeps a clogged mat from floating, it does not clean it.`,
      'The top feed is not lost water. It moves the pond, feeds the falls, and spares the media what they could not take.',
    ],
    asks: 'What is left to do?',
  },
  {
    title: 'Cleaned',
    edits: edits({ ...HALF, ...CLEAN }),
    says: (at) => [
      `The mat is rinsed, the valves stand half open: ${share(at)} slip round, and the water stays ${stays(at)} in the pores.`,
      'So: measure the gap and close it, feed the media gently, dump the rest on top, and clean in time.',
      'Switch off the pump and its power before reaching into filter or vault; wear what keeps the muck off you.',
    ],
    asks: '',
  },
];

/** What a step says of a site that stands on it; undefined where its filter does not run. */
export function taughtOf(scenario: Scenario, balance: BalanceAnswer | null | undefined): Taught | undefined {
  const media = scenario.filter?.media;
  return media && balance && balance.channeled !== null ? { scenario, balance, media } : undefined;
}
