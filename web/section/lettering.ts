import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Moment } from '../state/moment.ts';
import { measureText, type SceneWords, type Subject, wordMarks, wordsOfScene } from './labels/index.ts';
import type { Mark } from './marks.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';
import { settingsAt } from './settings.ts';

/** What words are read from and set on. */
export interface Known {
  readonly scene: Scene;
  readonly scale: Scale;
  readonly answer: RunAnswer;
  readonly balance: BalanceAnswer | undefined;
  /** Places of the parts the question asked is about. */
  readonly asked?: readonly string[];
}

const subjectOf = ({ scene, answer, balance }: Known, moment: Moment): Subject => ({
  scenario: scene.scenario,
  answer,
  balance,
  moment,
  display: scene.scenario.display,
});

/** Places for the words of all moments: water stands and falls as in the running site, or as at the moment given. */
export function wordsPlaced(known: Known, moment: Moment): SceneWords {
  const { scene, scale, answer, balance, asked } = known;
  const levels = { ...moment.levels, ...balance?.levels };
  const flows = { ...moment.flows, ...balance?.flows };
  const settings = settingsAt(scene.scenario, answer.events, moment.t);
  return wordsOfScene({
    scene,
    scale,
    subject: subjectOf(known, { t: moment.t, levels, flows }),
    running: { levels, flows, settings, flowScale: 0 },
    measure: measureText,
    ...(asked ? { asked } : {}),
  });
}

/** The words of a moment in their places. */
export const wordsAt = (known: Known, placed: SceneWords, moment: Moment): Mark[] =>
  wordMarks(placed, known.scene, known.scale, subjectOf(known, moment), measureText);
