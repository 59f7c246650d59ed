/** Published floods routed through a reservoir, answered by running a site whose pond is the reservoir. */
import { IDEAL_CREST } from '../../sim/laws/crest.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type { Action, Leak } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { published, publishedBy } from './checks.ts';
import { labSite, levelAfter, levelAt, walls, weir } from './site.ts';
import { COMPANION, flowAt, hydrograph, once } from './site-parts.ts';
import { CFS, FOOT, G, INCH, YARD } from './units.ts';

/** Elevation at which the laboratory's reservoirs begin to spill, m. */
const SILL = -5;

/** Greatest of something over the rows of a record. */
function greatest(record: RunRecord, of: (t: number) => number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < record.length; row++) most = Math.max(most, of(record.time(row)));
  return most;
}

/** Reservoir of Punmia & Pande Lal: heights over its spillway m, areas ha, outflows and inflows m³/s. */
const punmia = {
  height: [0, 0.3, 0.6, 0.9, 1.2, 1.5, 1.8, 2.1, 2.4, 2.7],
  area: [405, 412, 420, 425, 428, 436, 445, 453, 460, 469],
  outflow: [0, 14.9, 42.2, 77.3, 119, 169, 217, 272, 334, 405],
  inflow: [42, 45, 57, 88, 147, 210, 272, 340, 350, 338, 314, 288, 263, 240, 198, 170, 143, 120],
  routed: [10, 24, 42, 74, 130, 194, 260, 316, 334, 328, 312, 286, 264, 236, 204, 177, 150],
} as const;
const SIX_HOURS = 6 * 3600;

/** Width of the ideal crest that passes a table of outflows, least squares in their ratios; it keeps within 1.6 %. */
function spillwayWidth(): number {
  let [once, twice] = [0, 0];
  for (let i = 1; i < punmia.height.length; i++) {
    const ratio = (IDEAL_CREST * punmia.height[i] ** 1.5) / punmia.outflow[i];
    once += ratio;
    twice += ratio * ratio;
  }
  return once / twice;
}

const punmiaRun = once(() => {
  const span = SIX_HOURS * (punmia.inflow.length - 1);
  const pond = {
    profile: punmia.height.map((h, i) => [SILL + h, 1e4 * punmia.area[i]] as const),
    level: SILL,
    rim: weir(spillwayWidth(), SILL),
  };
  return run(labSite({ span, pond, ...hydrograph(SIX_HOURS, punmia.inflow, 6) })).record;
});
const PUNMIA = `Punmia & Pande Lal, Irrigation and Water Power Engineering, example 6.1: areas and inflows as tabled, the tabled outflow by one crest; routed there by curves read off by hand (${COMPANION})`;
/** How near a curve that ends at 405 m³/s is read by hand, m³/s. */
const READING = 5;
for (const [i, expected] of punmia.routed.entries()) {
  const hours = 6 * (i + 1);
  published({
    id: `site-reservoir Punmia 6.1, outflow at ${hours} h, m³/s`,
    source: PUNMIA,
    memory: false,
    kind: 'published value',
    tolerance: READING / expected,
    expected,
    got: () => flowAt(punmiaRun(), 'rim', 3600 * hours),
  });
}
publishedBy({ source: PUNMIA, kind: 'published value', tolerance: 0.015 }, [
  [
    'site-reservoir Punmia 6.1, peak of the outflow, m³/s',
    334,
    () => greatest(punmiaRun(), (t) => flowAt(punmiaRun(), 'rim', t)),
  ],
  [
    'site-reservoir Punmia 6.1, highest level over the spillway, m',
    2.37,
    () => greatest(punmiaRun(), (t) => levelAt(punmiaRun(), 'pond', t) - SILL),
  ],
]);

/** Outflow by stage of the detention pond of Applied Hydrology, every half foot, and inflow every ten minutes, ft³/s. */
const chow = {
  outflow: [0, 3, 8, 17, 30, 43, 60, 78, 97, 117, 137, 156, 173, 190, 205, 218, 231, 242, 253, 264, 275],
  inflow: [0, 60, 120, 180, 240, 300, 360, 320, 280, 240, 200, 160, 120, 80, 40, 0],
} as const;
const HALF_FOOT = 0.5 * FOOT;

/** A table of outflows as holes one over the other, each sized by what those under it leave to pass; within 0.4 %. */
function holesOf(outflow: readonly number[]): Leak[] {
  const holes: Leak[] = [];
  for (let i = 0; i + 1 < outflow.length; i++) {
    const level = SILL + (i + 1) * HALF_FOOT;
    const below = holes.reduce((sum, hole) => sum + hole.area * Math.sqrt(2 * G * (level - hole.elevation)), 0);
    const area = Math.max(0, outflow[i + 1] * CFS - below) / Math.sqrt(2 * G * HALF_FOOT);
    holes.push({ elevation: SILL + i * HALF_FOOT, area });
  }
  return holes;
}

const chowRun = once(() => {
  const leaks: Action[] = holesOf(chow.outflow).map((hole, i) => ({
    timing: { at: 0 },
    deed: { do: 'leak', in: 'pond', ...hole },
    place: `hole ${i}`,
  }));
  const { hoses, actions } = hydrograph(
    600,
    chow.inflow.map((flow) => flow * CFS),
    10,
  );
  const pond = { profile: walls(43560 * FOOT ** 2, SILL, 0), level: SILL };
  return run(labSite({ span: 9000, pond, hoses, actions: [...leaks, ...actions] })).record;
});
published({
  id: 'site-reservoir Chow 8.2, peak of the outflow, ft³/s',
  source:
    'Chow, Maidment & Mays (1988), Applied Hydrology, examples 8.2.1 and 8.2.2: routed there in steps of ten minutes',
  memory: true,
  kind: 'published value',
  tolerance: 0.01,
  expected: 270,
  got: () => greatest(chowRun(), (t) => flowAt(chowRun(), 'leak', t)) / CFS,
});
published({
  id: 'site-reservoir Chow 8.2, highest stage, ft',
  source: 'The same tables, straight between their points, as a differential equation solved by an independent program',
  memory: false,
  kind: 'derived',
  tolerance: 0.005,
  expected: 9.758,
  got: () => greatest(chowRun(), (t) => levelAt(chowRun(), 'pond', t) - SILL) / FOOT,
});

published({
  id: 'site-reservoir Paradise 5.11, storage over its weir, ft³',
  source: `R.S. Paradise, Problems in Hydraulics, example 5.11: what stands higher than 6 in over a weir of 150 ft (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.003,
  expected: 1.37e8,
  got: () => {
    const area = 5e6 * YARD ** 2;
    const rim = weir(150 * FOOT, SILL, (3.2 * Math.sqrt(FOOT)) / IDEAL_CREST);
    const pond = { profile: walls(area, SILL - 1, 0), level: SILL, rim };
    const hoses = [{ name: 'flood', flow: 3200 * CFS, on: true, meter: undefined }];
    const steady = levelAfter(labSite({ span: 20 * 86400, pond, hoses }), 'pond');
    return ((steady - SILL - 6 * INCH) * area) / FOOT ** 3;
  },
});
