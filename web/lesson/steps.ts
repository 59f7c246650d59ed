/** The lesson on channeling: what each step sets in the teaching site, and what it says of the water as it then runs. */
import { formatDuration, formatFine, formatFlow, formatPercent, formatVolume } from '../../sim/quantity/index.ts';
import { bySquare, gapNow, porosityOf } from './losses.ts';
import type { Setting } from './settings.ts';
import type { Taught } from './taught.ts';

export interface Step {
  readonly title: string;
  readonly sets: Setting;
  readonly says: (taught: Taught) => readonly string[];
  /** What a class may be asked before the next step is taken. */
  readonly asks: string;
}

const HALF = { bottom: 0.5, top: 0.5 };
const ALL_UP = { bottom: 1, top: 0 };
const GENTLE = { bottom: 0.4, top: 1 };
const CLEAN = { gap: '2.5 mm', muck: '0 L' };
const CLOGGED = { gap: '2.5 mm', muck: '4 L' };

const flow = ({ scenario, balance }: Taught, name: string): string =>
  formatFlow(balance.flows[name] ?? 0, scenario.display);
export const share = ({ balance }: Taught): string => formatPercent(balance.channeled ?? 0);
export const gapWords = ({ scenario, media }: Taught): string => formatFine(media.gap, scenario.display);
export const head = ({ scenario, balance }: Taught): string => formatFine(balance.mediaHead ?? 0, scenario.display);
const floatsAt = ({ scenario, balance }: Taught): string =>
  formatFine((balance.mediaHead ?? 0) / (balance.lift || 1), scenario.display);
export const stays = ({ balance }: Taught): string =>
  balance.contact ? formatDuration(balance.contact.pore) : 'no time at all';
export const muck = ({ scenario, media }: Taught): string => formatVolume(media.layers[0].deposit, scenario.display);
const floats = ({ balance }: Taught): boolean => (balance.lift ?? 0) >= 1;

/** Slower water rather takes the gap where more of the gap's loss goes by the square of the speed than of the media's. */
function slowerWords(at: Taught): string[] {
  const { media, gap } = bySquare(at);
  if (floats(at) || gap <= media) return [];
  return [
    `It is even a little more than in the fourth step, where more came up. Both ways cost the same head; of it, ${formatPercent(gap)} go by the square of the speed in the gap, at its ends and in eddies along its walls, and only ${formatPercent(media)} in the media. That part shrinks fastest as the water slows down, and so slow water finds the gap relatively easier.`,
  ];
}

export const STEPS: readonly Step[] = [
  {
    title: 'Two ways through a filter',
    sets: { ...HALF, ...CLEAN },
    says: (at) => [
      `At the tee the water parts: ${flow(at, 'bottom feed')} come up through the filter from below, ${flow(at, 'top feed')} are dumped on top and never see the media.`,
      `What comes up has two ways: through the media, and through the gap between the mats and the wall, here ${gapWords(at)} wide. Of it, ${share(at)} slip round. That is the channeled share.`,
      `In the pores the water stays ${stays(at)}: so long the media have for their work.`,
    ],
    asks: 'What will happen to the channeled share if all the pump’s water is sent up from below?',
  },
  {
    title: 'More water from below',
    sets: { ...ALL_UP, ...CLEAN },
    says: (at) => [
      `The top feed is shut, and ${flow(at, 'bottom feed')} go up. The channeled share is ${share(at)}.`,
      `Both ways take more, each by nearly as much: in both the loss grows almost in step with the flow. As long as the media lie still, more flow alone does not push the water round them. They cost ${head(at)} of head now, and would float up at ${floatsAt(at)}.`,
      `What does change is the time. In the pores the water now stays ${stays(at)}.`,
    ],
    asks: 'What else could send the water round the sides, if not the flow?',
  },
  {
    title: 'The gap decides',
    sets: { ...HALF, gap: '15 mm', muck: '0 L' },
    says: (at) => [
      `Valves and media are as in the first step; only the gap is wider, ${gapWords(at)}. Now ${share(at)} of what comes up slip round.`,
      'Water between two walls runs by the cube of their distance as long as it runs quietly. Nobody sees this gap from above, and few people have measured it: any figure for the channeled share is only as good as that measurement.',
      'The mend is made by hand: cut the mats full, press them to the wall, close the gap with a strip of mat.',
    ],
    asks: 'Say the gap is narrow again. What does a season without cleaning do?',
  },
  {
    title: 'A season of fine muck',
    sets: { ...HALF, ...CLOGGED },
    says: (at) => [
      `Fine muck, ${muck(at)} of it, has settled in the fine mat: ${formatPercent(porosityOf(at, 0))} of its space is still pores. The media now cost ${head(at)} of head; they float up at ${floatsAt(at)}.`,
      `The gap resists as it always did, so the water goes there: ${share(at)} slip round, with the same valves and the same gap as in the first step.`,
      `In the pores that are left the water stays ${stays(at)}, but less of it passes there.`,
    ],
    asks: 'The filter seems slow. Somebody opens the bottom valve wide and shuts the top one. What happens?',
  },
  {
    title: 'Pushed',
    sets: { ...ALL_UP, ...CLOGGED },
    says: (at) => [
      `All of it goes up: ${flow(at, 'bottom feed')}.`,
      floats(at)
        ? `Lying still, the media would cost more head than the ${floatsAt(at)} at which they float up. So they float, and the gap beside them opens from ${gapWords(at)} to ${formatFine(gapNow(at), at.scenario.display)}: ${share(at)} slip round. The head rises little past that point, to ${head(at)}: whoever pushes harder opens the gap further, and the water goes by instead of raising the head.`
        : `The media cost ${head(at)} of head, and would float up at ${floatsAt(at)}: they still lie, and ${share(at)} slip round.`,
      'This is where ‘too much pump makes it channel’ is true: with fine or clogged media, and only past the point at which they lift.',
    ],
    asks: 'Which valve would you turn, and what would it mend?',
  },
  {
    title: 'Gently, the rest over the top',
    sets: { ...GENTLE, ...CLOGGED },
    says: (at) => [
      `The top feed takes ${flow(at, 'top feed')} now, and ${flow(at, 'bottom feed')} come up. The media cost ${head(at)}, and ${floats(at) ? 'still float' : 'lie still'}.`,
      `But ${share(at)} still slip round: a valve keeps a clogged mat from floating, it does not clean it.`,
      ...slowerWords(at),
      'The top feed is not lost water. It moves the pond, feeds the falls, and spares the media what they could not take.',
    ],
    asks: 'What is left to do?',
  },
  {
    title: 'Cleaned',
    sets: { ...HALF, ...CLEAN },
    says: (at) => [
      `The mat is rinsed, the valves stand half open: ${share(at)} slip round, and the water stays ${stays(at)} in the pores.`,
      'So: measure the gap and close it, feed the media gently, dump the rest on top, and clean in time.',
      'Switch off the pump and its power before reaching into filter or vault; wear what keeps the muck off you.',
    ],
    asks: 'What would you measure first on a filter that you have never seen?',
  },
];

/** The figures of a site that stands on no step. */
export const figuresNow = (at: Taught): string =>
  `As it stands, ${share(at)} of what comes up slip round, the media cost ${head(at)} of head, and in the pores the water stays ${stays(at)}.`;
