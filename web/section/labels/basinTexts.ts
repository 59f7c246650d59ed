import { formatLength, formatPercent } from '../../../sim/quantity/format.ts';
import type { Pool, Stone, Stream } from '../../../sim/scenario/scenario.ts';
import { elevationFigure, flowFigure, NO_FLOW, overFigure } from './figures.ts';
import { lowestOf } from './levelMarks.ts';
import { type LabelText, labelText, labelTextOrLine, type Subject } from './text.ts';

/** A basin with less water on its floor is empty, m. */
const DRY = 1e-3;

/** What is lost over an edge while water runs over it, else a figure. */
function lostOver(name: string, figure: string, { moment, display }: Subject): string {
  const flow = moment.flows[name] ?? 0;
  return flow > NO_FLOW ? `${flowFigure(flow, display)} over its edge` : figure;
}

/** The pond, its pump vault, the intake between them and the overflow pipe. */
export function pondTexts(subject: Subject): LabelText[] {
  const { scenario, moment, display } = subject;
  const { pond, intake } = scenario;
  const level = moment.levels['pond'];
  const vault = moment.levels['vault'];
  const cover = level - intake.elevation;
  const texts = [
    labelTextOrLine(
      'pond',
      'pond',
      lostOver('rim', overFigure(level - lowestOf(pond.rim), 'its edge', display), subject),
      level - pond.profile[0][0] > DRY ? elevationFigure(level, display) : 'empty',
    ),
    labelText('vault', 'pump vault', overFigure(vault - level, 'the pond', display), elevationFigure(vault, display)),
    labelText('intake', 'intake', cover > 0 ? `${formatLength(cover, display)} under water` : 'dry'),
  ];
  if (pond.overflow) {
    const flow = moment.flows['overflow'] ?? 0;
    const figure =
      flow > NO_FLOW ? flowFigure(flow, display) : `${formatLength(pond.overflow.diameter, display)} wide, dry`;
    texts.push(labelText('pond.overflow', 'overflow pipe', figure));
  }
  return texts;
}

/** The filter, and how much slips round its mats. */
export function filterTexts(subject: Subject): LabelText[] {
  const { scenario, moment, display } = subject;
  const { filter } = scenario;
  if (!filter) return [];
  const over = overFigure(moment.levels['filter'] - lowestOf(filter.lip), 'its lip', display);
  const texts = [labelText('filter', 'filter', lostOver('filter rim', over, subject))];
  if (filter.media) {
    const [through, round] = ['media', 'gap'].map((name) => Math.max(0, moment.flows[name] ?? 0));
    const all = through + round;
    texts.push(
      labelText('filter.media', 'media', all > NO_FLOW ? `channeled share ${formatPercent(round / all)}` : 'at rest'),
    );
  }
  return texts;
}

function stoneText(stone: Stone, place: string, pool: Pool, { moment, display }: Subject): LabelText {
  const head = moment.levels[pool.name] - lowestOf(stone);
  const over = head > 0 ? `${formatLength(head, display)} over it` : 'dry';
  const flow = (name: string): number => Math.max(0, moment.flows[name] ?? 0);
  const all = pool.stones.reduce((sum, { name }) => sum + flow(name), 0);
  const shared = pool.stones.length > 1 && all > NO_FLOW && head > 0;
  return labelText(
    place,
    stone.name,
    shared ? `${over}, ${formatPercent(flow(stone.name) / all)} of the flow` : over,
    over,
  );
}

function streamText(stream: Stream, place: string, subject: Subject): LabelText {
  const { moment, display } = subject;
  const depth = Math.max(0, moment.levels[stream.name] - stream.foot);
  const deep = depth > DRY / 2 ? `${formatLength(depth, display)} deep` : 'dry';
  const long = `${formatLength(stream.length, display)} long, ${deep}`;
  const over = (figure: string): string => lostOver(`${stream.name} edge`, figure, subject);
  return labelText(place, stream.name, over(long), over(deep));
}

/** Falls and streams in the order of the water's way. */
export function courseTexts(subject: Subject): LabelText[] {
  return subject.scenario.watercourse.flatMap((reach, i) => {
    const place = `watercourse[${i}]`;
    if (reach.kind === 'stream') return [streamText(reach, place, subject)];
    const z = subject.moment.levels[reach.name];
    const level = z - reach.profile[0][0] > DRY ? elevationFigure(z, subject.display) : 'empty';
    const stones = reach.stones.map((stone, k) => stoneText(stone, `${place}.stones[${k}]`, reach, subject));
    const figure = lostOver(`${reach.name} rim`, level, subject);
    return [labelTextOrLine(place, reach.name, figure, figure), ...stones];
  });
}
