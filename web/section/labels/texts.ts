import type { Moment } from '../../state/moment.ts';
import { courseTexts, filterTexts, pondTexts } from './basinTexts.ts';
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

const edgeMoment = ({ answer }: Subject, edge: 'min' | 'max', t: number): Moment => {
  const of = (ranges: Subject['answer']['levels']): Record<string, number> =>
    Object.fromEntries(Object.entries(ranges).map(([name, range]) => [name, range[edge].value]));
  return { t, levels: of(answer.levels), flows: of(answer.flows) };
};

const widest = (lines: readonly (readonly LabelLine[])[], measure: Measure): LabelLine[] => {
  const most = Math.max(...lines.map((each) => each.length));
  return Array.from({ length: most }, (_, i) => {
    const there = lines.flatMap((each) => each[i] ?? []);
    return there.reduce((a, b) => (measure(b.text, b.style) > measure(a.text, a.style) ? b : a));
  });
};

/**
 * The words of every part where they are widest: at the moment, and with all levels and flows at their least and at
 * their greatest. Seats found for them hold the words of the moments between, so that labels stand still while the
 * water moves.
 */
export function roomyTexts(subject: Subject, measure: Measure): LabelText[] {
  const moments = [subject.moment, edgeMoment(subject, 'min', 0), edgeMoment(subject, 'max', 0)];
  const [now, ...others] = moments.map((moment) => labelTexts({ ...subject, moment }));
  return now.map(({ id, bare }, i) => {
    const all = [now, ...others].map((texts) => texts[i]);
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

/**
 * Placed labels with the words of another moment in their seats.
 *
 * @returns undefined where a text has outgrown its seat, or a part has no words any more: place them anew
 */
export function reworded(
  placed: readonly Placed[],
  texts: readonly LabelText[],
  measure: Measure,
): Placed[] | undefined {
  const byId = new Map(texts.map((text) => [text.id, text]));
  const out: Placed[] = [];
  for (const label of placed) {
    const text = byId.get(label.id);
    const lines = text && linesOf(text, label.form);
    if (!lines || lines.length > label.lines.length) return undefined;
    const room = label.box.right - label.box.left + SPARE;
    if (lines.some((line) => measure(line.text, line.style) > room)) return undefined;
    out.push({ ...label, lines: lines.map((line, i) => ({ ...label.lines[i], ...line })) });
  }
  return out;
}
