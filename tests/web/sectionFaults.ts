/** What is wrong with a drawing: figures that are none, marks outside the sheet. */
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { measureText } from '../../web/section/labels/index.ts';
import { wordsAt, wordsPlaced } from '../../web/section/lettering.ts';
import type { Mark } from '../../web/section/marks.ts';
import { partsOf } from '../../web/section/parts.ts';
import { momentAt } from '../../web/state/moment.ts';
import { type Drawn, drawn, marksOf, pointsOf } from './sectionPaths.ts';

/** px by which a stroke or a stone's rough edge may pass the sheet. */
const SLACK = 3;

function faultsOf(by: Drawn, marks: readonly Mark[]): string[] {
  const { width, height } = by.scale;
  const out = (x: number, y: number): boolean => x < -SLACK || x > width + SLACK || y < -SLACK || y > height + SLACK;
  return marks.flatMap((mark) => {
    if (mark.kind === 'text') {
      const long = measureText(mark.text, 'figure') * { start: 1, middle: 0.5, end: 0 }[mark.at];
      if (/NaN|undefined/.test(mark.text)) return [`no figure in ${mark.text}`];
      return out(mark.x, mark.y) || mark.x + long > width + SLACK ? [`words outside: ${mark.text}`] : [];
    }
    if (/NaN|Infinity|undefined/.test(mark.d)) return [`no number in ${mark.look}: ${mark.d.slice(0, 80)}`];
    if (mark.clip) return [];
    const point = pointsOf(mark.d).find(([x, y]) => out(x, y));
    return point ? [`${mark.look} outside at ${point}`] : [];
  });
}

/** Faults of a site at four moments of its run, its words among them. */
export function faultsOfSite(scenario: Scenario, width: number): string[] {
  const by = drawn(scenario, width);
  const moments = [0, 0.3, 0.5, 1].map((share) => momentAt(by.series, share * scenario.span));
  const flowing = moments.map(by.at);
  const clips = [...by.ground.clips, ...flowing.flatMap(({ clips }) => clips)];
  const clipFaults = clips.filter(({ d }) => /NaN|Infinity/.test(d)).map(({ id }) => `no number in the clip ${id}`);
  const parts = partsOf(by.scene, by.scale).map((p): Mark => ({ kind: 'path', d: p.d, look: `part ${p.place}` }));
  const known = { scene: by.scene, scale: by.scale, answer: by.answer, balance: by.balance };
  const placed = wordsPlaced(known, moments[0]!);
  const words = moments.flatMap((moment) => wordsAt(known, placed, moment));
  return [
    ...clipFaults,
    ...faultsOf(by, parts),
    ...faultsOf(by, words),
    ...flowing.flatMap((f) => faultsOf(by, marksOf(by, f))),
  ];
}
