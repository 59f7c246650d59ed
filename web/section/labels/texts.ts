import type { Moment } from '../../state/moment.ts';
import { courseTexts, filterTexts, pondTexts } from './basinTexts.ts';
import { linesIn } from './block.ts';
import { plumbingTexts } from './plumbingTexts.ts';
import type { LabelLine, Measure, Placed } from './request.ts';
import type { LabelText, Subject } from './text.ts';
import { linesOf } from './wordings.ts';

/** The words of every part of a site at a moment, in the trade's terms and the display's units. */
export const labelTexts = (subject: Subject): LabelText[] => [
  ...filterTexts(subject),
  ...courseTexts(subject),
  ...pondTexts(subject),
  ...plumbingTexts(subject),
];

/** Moments between all that was least and all that was greatest: a figure is widest somewhere between. */
const STEPS = 8;

function momentBetween({ answer }: Subject, share: number): Moment {
  const of = (ranges: Subject['answer']['levels']): Record<string, number> =>
    Object.fromEntries(
      Object.entries(ranges).map(([name, { min, max }]) => [name, min.value + share * (max.value - min.value)]),
    );
  return { t: 0, levels: of(answer.levels), flows: of(answer.flows) };
}

const widest = (lines: readonly (readonly LabelLine[])[], measure: Measure): LabelLine[] => {
  const most = Math.max(...lines.map((each) => each.length));
  return Array.from({ length: most }, (_, i) => {
    const there = lines.flatMap((each) => each[i] ?? []);
    return there.reduce((a, b) => (measure(b.text, b.style) > measure(a.text, a.style) ? b : a));
  });
};

/**
 * The words of every part where they are widest: at the moment, and from all levels and flows at their least to their
 * greatest. Seats found for them hold the words of other moments, so that labels stand still while the water moves.
 */
export function roomyTexts(subject: Subject, measure: Measure): LabelText[] {
  const between = Array.from({ length: STEPS + 1 }, (_, i) => momentBetween(subject, i / STEPS));
  const moments = [subject.moment, ...between].map((moment) => labelTexts({ ...subject, moment }));
  return moments[0].map(({ id, bare }, i) => {
    const all = moments.map((texts) => texts[i]);
    const lines = widest(
      all.map((text) => text.lines),
      measure,
    );
    if (!all.some((text) => text.short)) return { id, lines, bare };
    const short = widest(
      all.map((text) => text.short ?? text.lines),
      measure,
    );
    return { id, lines, short, bare };
  });
}

/** Room a text may take beyond its box before it comes too near to others, px. */
const SPARE = 3;

/** Placed labels with the words of another moment in their seats; only the name of one whose words have outgrown it. */
export function reworded(placed: readonly Placed[], texts: readonly LabelText[], measure: Measure): Placed[] {
  const byId = new Map(texts.map((text) => [text.id, text]));
  return placed.map((label) => {
    const text = byId.get(label.id);
    if (!text) return label;
    const room = label.box.right - label.box.left + SPARE;
    const holds = (lines: readonly LabelLine[]): boolean =>
      lines.length <= label.lines.length && lines.every((line) => measure(line.text, line.style) <= room);
    const lines = [linesOf(text, label.form), linesOf(text, 'figure dropped')].find(holds) ?? [];
    return { ...label, lines: linesIn(label.box, lines, label.align, measure) };
  });
}
