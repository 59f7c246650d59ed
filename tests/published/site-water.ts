/** Published weather, hoses and water left in pipes, answered by running a site. */
import { boreOf } from '../../sim/scenario/pipe-sizes.ts';
import type { Action, Deed } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { published, publishedBy } from './checks.ts';
import { labSite, levelAfter, levelAt, walls } from './site.ts';
import { COMPANION, once } from './site-parts.ts';
import { FOOT, GALLON_US, INCH, rootOf } from './units.ts';

const DAY = 86400;

/** A week of a pan: rain and water added each morning, mm; a negative figure was taken out. */
const pan = { added: [12, 5, 2, -3, 1, 6, 11], rain: [0, 6, 8, 12, 9, 5, 0] } as const;
/** Of the laboratory's pond of 1000 m². */
const A_MILLIMETER_A_MINUTE = (1000 * 0.001) / 60;
const name = 'can';
const panDays: readonly Action[] = pan.added.flatMap((added, day) => {
  const at = day * DAY;
  const storm: Action = {
    timing: { at },
    deed: { do: 'storm', depth: pan.rain[day] / 1000, lasting: 3600, shape: 'even' },
    place: `rain ${day}`,
  };
  const [begin, end] = [at + 7200, at + 7200 + 60 * Math.abs(added)];
  const turn = (when: number, deed: Deed): Action => ({ timing: { at: when }, deed, place: `day ${day}` });
  if (added > 0)
    return [storm, turn(begin, { do: 'hose', to: 'on', name }), turn(end, { do: 'hose', to: 'off', name })];
  // An order that is over where it is ends the one that draws.
  const draw = (until: number): Deed => ({ do: 'pump out', flow: A_MILLIMETER_A_MINUTE, until });
  return [storm, turn(begin, draw(-9)), turn(end, draw(0))];
});
/** How far the pan ends over its mark after the week, m, at a depth evaporating a day. */
function panAfter(evaporation: number): number {
  const site = labSite({
    span: 7 * DAY,
    weather: { evaporation: evaporation / DAY },
    hoses: [{ name, flow: A_MILLIMETER_A_MINUTE, on: false, meter: undefined }],
    actions: panDays,
  });
  return levelAfter(site, 'pond') + 5;
}
published({
  id: 'site-evaporation Punmia 4.14, lake by the balance of a pan, mm/d',
  source: `Punmia & Pande Lal, Irrigation and Water Power Engineering, example 4.14: 0.8 of what brings the pan back to its mark (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.001,
  expected: 8.46,
  got: () => 0.8 * 1000 * rootOf((rate) => -panAfter(rate), 0, 0.1),
});

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Percent of a year's 30 in by month, and the inches a month that are printed, to a tenth. */
const idaho = {
  percent: [0.5, 1.5, 3, 8, 12, 15, 19, 17, 11, 6, 4, 3],
  inches: [0.2, 0.4, 0.9, 2.4, 3.6, 4.5, 5.7, 5.1, 3.3, 1.8, 1.2, 0.9],
} as const;
const idahoYear = once(() => {
  const evaporation = idaho.percent.map((share, i) => (0.3 * share * INCH) / (DAYS[i] * DAY));
  return run(labSite({ span: 365 * DAY, weather: { evaporation } })).record;
});
let begin = 0;
for (const [i, month] of MONTHS.entries()) {
  const [from, to] = [begin * DAY, (begin + DAYS[i]) * DAY];
  begin += DAYS[i];
  published({
    id: `site-evaporation Idaho, pond's fall in ${month}, in`,
    source:
      'Molnau, Kpordze & Craine (1992), Monthly shallow pond evaporation in Idaho, ASAE PNW 92-111, example of 30 in a year, printed to a tenth of an inch',
    memory: false,
    kind: 'published value',
    tolerance: 0.0501 / idaho.inches[i],
    expected: idaho.inches[i],
    got: () => (levelAt(idahoYear(), 'pond', from) - levelAt(idahoYear(), 'pond', to)) / INCH,
  });
}

publishedBy({ source: 'NIST SP 811, definition of inch, foot and gallon', kind: 'derived', tolerance: 1e-4 }, [
  [
    'site-rain an inch on 100 square feet, gal',
    62.338,
    () => {
      const area = 100 * FOOT ** 2;
      const deed = { do: 'storm', depth: INCH, lasting: 3600, shape: 'even' } as const;
      const actions = [{ timing: { at: 0 }, deed, place: 'storm' }];
      const site = labSite({ span: 7200, pond: { profile: walls(area, -10, 0) }, actions });
      return ((levelAfter(site, 'pond') + 5) * area) / GALLON_US;
    },
  ],
  [
    'site-hose of ten gallons a minute into a tub, gal after 30 s',
    5,
    () => {
      const hoses = [{ name: 'hose', flow: (10 * GALLON_US) / 60, on: true, meter: undefined }];
      return (
        ((levelAfter(labSite({ span: 30, pond: { profile: walls(1, -10, 0) }, hoses }), 'pond') + 5) * 1) / GALLON_US
      );
    },
  ],
]);

/** What runs back to the vault out of a full line of a size once the check valve has failed, gal(US). */
function runBack(size: string, feet: number): number {
  const diameter = boreOf(size);
  if (diameter === undefined) throw new Error(`no bore of ${size}`);
  const half = { diameter, length: (feet / 2) * FOOT, roughness: 1.5e-6, fittings: {}, k: 0 };
  const site = labSite({
    span: 3600,
    pump: { suction: -5, minimum: -4.9 },
    vault: { profile: walls(1e4, -9, 0) },
    plumbing: {
      main: { ...half, checkValve: { kind: 'none' } },
      bottomFeed: { ...half, valve: 1, law: 'ball', inlet: -1 },
      tee: -1.5,
      level: -1,
    },
    watercourse: [],
  });
  return ((levelAfter(site, 'vault') + 5) * 1e4) / GALLON_US;
}
const WORKSHEETS =
  'University of Minnesota / Minnesota Pollution Control Agency, onsite sewage design worksheets (pressure distribution, pump selection), filled examples in a public record';
publishedBy({ source: WORKSHEETS, kind: 'published value', tolerance: 0.002 }, [
  ['site-pipe runs back, 100 ft of 2 in, gal', 17.43, () => runBack('2 in', 100)],
]);
publishedBy({ source: `${WORKSHEETS}; two digits a foot`, kind: 'published value', tolerance: 0.03 }, [
  ['site-pipe runs back, 183 ft of 2 in, gal', 31.1, () => runBack('2 in', 183)],
  ['site-pipe runs back, 100 ft of 1 in, gal', 4.5, () => runBack('1 in', 100)],
  ['site-pipe runs back, 100 ft of 1 1/4 in, gal', 7.8, () => runBack('1 1/4 in', 100)],
]);
