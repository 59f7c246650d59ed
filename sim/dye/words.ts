import { areaAt, makeStorage } from '../laws/storage.ts';
import { formatDuration, formatNumber, formatPercent } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Figures } from './figures.ts';
import { filterWithMedia } from './filterState.ts';

/** Still water beside the media of more than this share of media and gap is told. */
const BESIDE = 0.05;

/** Why a site's filter can have no dye test at any moment; undefined where it can. */
export function neverWords(s: Scenario): string | undefined {
  if (!s.filter) return 'There is no filter here, so there is nothing for a dye to go through.';
  if (!s.filter.media)
    return (
      'There are no media in the filter, so no water goes through or round them: it is one mixed tank, from which ' +
      'dye runs out from the first moment on, a tenth of it in a tenth of the mean stay.'
    );
  if (s.plumbing.bottomFeed) return undefined;
  return (
    'There is no bottom feed: nothing enters under the media, and all water that comes by the top feed leaves the ' +
    'filter untreated.'
  );
}

/** The figures as sentences. */
export function figureWords(s: Scenario, figures: Figures): string {
  const { mean, t10, t50, t90, morrill, T } = figures;
  const stay = (seconds: number): string => formatDuration(seconds);
  return [
    `Water stays in the filter for ${stay(mean)} on average: a tenth of the dye is out after ${stay(t10)}, half of it ` +
      `after ${stay(t50)}, nine tenths after ${stay(t90)} (Morrill index ${formatNumber(morrill, 1)}).`,
    waysWords(figures),
    `t10/T is ${formatNumber(t10 / T, 2)}, ${classWords(figures)} on the published scale of basins for disinfection.`,
    seriesWords(figures),
    besideWords(s, figures),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function waysWords({ channeled, times: { media, gap } }: Figures): string {
  if (channeled === 0) return 'All of it goes through the media: there is no gap round them.';
  if (media === null || gap === null) return '';
  const share = formatPercent(channeled);
  const sooner = gap < media ? 'and overtakes the rest' : 'and comes later than the rest, yet untreated';
  return `${share} of it slips round the media, in ${formatDuration(gap)} against ${formatDuration(media)} through them, ${sooner}.`;
}

function classWords({ class: own, neighbor, baffling }: Figures): string {
  const from = formatNumber(neighbor.from, 1);
  const side =
    baffling < neighbor.from
      ? `‘${neighbor.class}’ begins at ${from}`
      : `below ${from} it would be ‘${neighbor.class}’`;
  return `‘${own}’ (${side})`;
}

/** Half of the class is what was assumed of the media. */
function seriesWords({ tanks }: Figures): string {
  const parts = tanks === 1 ? 'one mixed tank' : `${tanks} equal mixed tanks in series`;
  return (
    `Half of that figure is assumed: the media are taken for ${parts}, which nobody has measured here, and the ` +
    'plenum and the free water for mixed. No check rests on it.'
  );
}

function besideWords(s: Scenario, { volumes: { gap } }: Figures): string {
  const filter = filterWithMedia(s);
  if (!filter) return '';
  const height = filter.media.layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const whole = areaAt(makeStorage(filter.profile), filter.media.bottom + height / 2);
  const used = filter.media.area + gap / height;
  if (whole <= used * (1 + BESIDE)) return '';
  return `${formatPercent(1 - used / whole)} of the filter lies beside media and gap: the water there is taken to stand still and is counted nowhere.`;
}
