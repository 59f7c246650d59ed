import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Moment } from '../state/moment.ts';
import { trajectory } from './falling.ts';
import { detailMarks, labelMarks } from './label-marks.ts';
import {
  type Detail,
  detailInScene,
  labelsOf,
  labelTexts,
  levelMarksOf,
  measureText,
  type Obstacle,
  type Placed,
  reworded,
  roomyTexts,
  type Subject,
} from './labels/index.ts';
import type { Mark } from './marks.ts';
import { fallsAt, type Running } from './running.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';
import { settingsAt } from './settings.ts';

/** Where words stand on a drawing, found once for a site, its answer and a width. */
export interface Lettering {
  readonly placed: readonly Placed[];
  readonly detail: Detail | undefined;
}

interface Known {
  readonly scene: Scene;
  readonly scale: Scale;
  readonly answer: RunAnswer;
  readonly balance: BalanceAnswer | undefined;
  readonly asked?: readonly string[];
}

const subjectOf = ({ scene, answer, balance }: Known, moment: Moment): Subject => ({
  scenario: scene.scenario,
  answer,
  balance,
  moment,
  display: scene.scenario.display,
});

/** Seats for the words of all moments: levels and falls stand as in the running site. */
export function letteringOf(known: Known, moment: Moment): Lettering {
  const { scene, scale, answer, balance, asked } = known;
  const { scenario } = scene;
  const levels = { ...moment.levels, ...balance?.levels };
  const marks = levelMarksOf(scenario, answer);
  const by = { marks, level: levels.pond, display: scenario.display, measure: measureText };
  const detail = scale.strip ? undefined : detailInScene(scene, scale, by);
  const running: Running = {
    levels,
    flows: balance?.flows ?? moment.flows,
    settings: settingsAt(scenario, answer.events, moment.t),
    flowScale: 0,
  };
  const nappes = fallsAt(scene, running).map(({ fall }): Obstacle => {
    const points = trajectory(fall).map(scale.at);
    return { kind: 'nappe', points: points.map(([x, y]) => ({ x, y })), width: 12 };
  });
  const texts = roomyTexts(subjectOf(known, moment), measureText);
  const placed = labelsOf({
    scene,
    scale,
    levels,
    texts,
    measure: measureText,
    display: scenario.display,
    marks,
    detail,
    more: [...nappes, lengthBar(scale)],
    ...(asked ? { asked } : {}),
  });
  return { placed, detail };
}

/** The strip of the sheet that the length bar and its words take. */
function lengthBar({ left, right, bottom }: Scale): Obstacle {
  const [top, end] = [bottom + 16, bottom + 34];
  const points = [
    { x: left - 8, y: top },
    { x: right, y: top },
    { x: right, y: end },
    { x: left - 8, y: end },
  ];
  return { kind: 'frame', points, closed: true };
}

/** The words of a moment in their seats, placed anew only where they have outgrown them. */
export function wordsAt(known: Known, lettering: Lettering, moment: Moment): Lettering {
  const fixed = new Set(lettering.placed.map(({ id }) => id));
  const texts = labelTexts(subjectOf(known, moment)).filter(({ id }) => fixed.has(id));
  const still = lettering.placed.filter(({ id }) => !texts.some((text) => text.id === id));
  const moving = lettering.placed.filter((label) => !still.includes(label));
  const now = reworded(moving, texts, measureText);
  return now ? { ...lettering, placed: [...now, ...still] } : letteringOf(known, moment);
}

export const letteringMarks = ({ placed, detail }: Lettering): Mark[] => [
  ...(detail ? detailMarks(detail) : []),
  ...labelMarks(placed),
];
