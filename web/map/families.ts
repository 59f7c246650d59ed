/** The families of lines a map may be drawn with: their figure, the unit their levels are round in, and their words. Pure. */
import type { Figure, OperatingMap } from '../../sim/map/answer.ts';
import { roundLevels } from '../../sim/map/lines.ts';
import { type Display, formatDuration, formatFlow, formatLength, formatPercent } from '../../sim/quantity/index.ts';
import { trueFractions } from '../state/typed-inches.ts';

export interface Family {
  readonly figure: Exclude<Figure, 'margin' | 'split' | 'lift' | 'emptyBed'>;
  /** What a press that shows it says. */
  readonly name: string;
  /** Any value, a level with what it is a level of, and a level by itself where that is told more finely. */
  readonly level: (value: number) => string;
  readonly whole: (value: number) => string;
  readonly round?: (value: number) => string;
  readonly unit: number;
  /** Steps smaller than so many units tell nothing. */
  readonly least: number;
}

const GALLON = 0.003785411784;
const INCH = 0.0254;
/** A flow up to here is told in liters or gallons a minute, m³/s. */
const SMALL = { metric: 999.5 / 60000, us: (20 * GALLON) / 60 };
const FLOW_UNIT = {
  metric: { small: 1 / 60000, large: 1 / 3600 },
  us: { small: GALLON / 60, large: GALLON / 3600 },
};
/** Contact times beyond this are round in minutes, s. */
const LONG = 300;

/** A round level in full: lines half a percent apart are told apart. */
const roundPercent = (value: number): string => `${Number((100 * value).toFixed(2))} %`;

/** The families that a map has something to show of. */
export function familiesOf({ over, points }: OperatingMap, display: Display): Family[] {
  const greatest = (figure: Figure): number => Math.max(0, ...points.map((point) => point[figure] ?? 0));
  const most = greatest('flow');
  const flowUnit = FLOW_UNIT[display][most < SMALL[display] ? 'small' : 'large'];
  // Levels are round: '50 L/min', not '50.0'.
  const flow = (value: number): string => formatFlow(value, display, most).replace(/\.0+(?= )/, '');
  const length = (value: number): string => trueFractions(formatLength(value, display));
  const times = points.flatMap(({ pore }) => pore ?? []).sort((a, b) => a - b);
  const long = (times[Math.floor(0.9 * times.length)] ?? 0) > LONG;
  const all: Family[] = [
    {
      figure: 'stone',
      name: over === null ? '' : `flow over ‘${over}’`,
      level: flow,
      whole: (value) => `${flow(value)} over ‘${over}’`,
      unit: flowUnit,
      least: 0,
    },
    {
      figure: 'channeled',
      name: 'share that slips round',
      level: formatPercent,
      whole: (value) => `${roundPercent(value)} slips round`,
      round: roundPercent,
      unit: 0.01,
      least: 0.5,
    },
    {
      figure: 'pore',
      name: 'contact time',
      level: formatDuration,
      whole: (value) => `${formatDuration(value)} in the media`,
      unit: long ? 60 : 1,
      least: 0,
    },
    {
      figure: 'headroom',
      name: 'headroom',
      level: length,
      whole: (value) => `${length(value)} of headroom`,
      unit: display === 'us' ? INCH : 0.001,
      least: display === 'us' ? 1 / 8 : 1,
    },
    {
      figure: 'flow',
      name: 'pump’s flow',
      level: flow,
      whole: (value) => `${flow(value)} in all`,
      unit: flowUnit,
      least: 0,
    },
  ];
  return all.filter(({ figure }) => greatest(figure) > 0);
}

/** Round levels of a family; none where its figure hardly changes. */
export const levelsOf = (map: OperatingMap, { figure, unit, least }: Family, most: number): number[] =>
  roundLevels(map, figure, unit, most, least);

/** What is drawn where nothing else was chosen: what the stone shows and what the filter does, as far as it changes. */
export function firstShown(map: OperatingMap, families: readonly Family[]): readonly Family['figure'][] {
  const drawn = families.filter((family) => levelsOf(map, family, 3).length > 0).map(({ figure }) => figure);
  const inFilter = drawn.includes('channeled') ? 'channeled' : 'pore';
  return drawn.filter(
    (figure) => figure === 'stone' || figure === inFilter || (figure === 'flow' && !drawn.includes('stone')),
  );
}
