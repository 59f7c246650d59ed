import { areaAt, levelOf } from '../../laws/storage.ts';
import { type Display, formatLength } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { AT_REST, LONGEST, type PondRise, pondRise } from '../../trials/stop.ts';
import { volumesAt } from '../inside.ts';
import type { RunRecord } from '../record.ts';
import { rulerStep } from './variants.ts';

const HOUR = 3600;
/** Of stops that bring the pond as high to within this the first stands, m. */
const ALIKE = 1e-6;

/**
 * The stop of a run after which the pond came nearest to its edge: by command, by a power cut or by the level switch.
 * Looked at as in the trial, from the first hour on until the pond has risen less than 0.1 mm in the last, or the pump
 * runs again. Undefined where the pump never stops.
 */
export function worstStop(s: Scenario, record: RunRecord): PondRise | undefined {
  let worst: PondRise | undefined;
  for (const { from, to } of stops(record)) {
    const rise = pondRise(s, record, from, lastRow(record, from, to));
    if (worst === undefined || rise.below < worst.below - ALIKE) worst = rise;
  }
  return worst;
}

/** Rows from each stop of the pump to its next start or the record's end. */
function stops(record: RunRecord): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = [];
  let from: number | undefined;
  for (const { row, settings } of record.stretches) {
    const { ramp } = settings;
    if (from === undefined && ramp.to === 0 && ramp.from > 0) from = row;
    if (from !== undefined && ramp.to > 0) {
      found.push({ from, to: row });
      from = undefined;
    }
  }
  if (from !== undefined) found.push({ from, to: record.length - 1 });
  return found;
}

/** Row at which the pond has come to rest after a stop, `to` at the latest. */
function lastRow(record: RunRecord, from: number, to: number): number {
  const { pond, basins } = record.network.parts;
  const volumes = new Float64Array(basins.length);
  const stop = record.time(from);
  const end = record.time(to);
  let before = levelOf(basins[pond].storage, record.volume(from, pond));
  for (let hour = 1; hour <= LONGEST; hour++) {
    const t = stop + hour * HOUR;
    if (t >= end) return to;
    volumesAt(record, t, volumes);
    const now = levelOf(basins[pond].storage, volumes[pond]);
    if (now - before < AT_REST || hour === LONGEST) return Math.min(to, record.rowAt(t) + 1);
    before = now;
  }
  return to;
}

/**
 * How far the edge has to be raised for a stop of the run to leave the room wanted: what ran over it before would then
 * stand in the pond, on the area that the water had at the edge or more.
 */
export function edgeForRun(r: PondRise, wanted: number, display: Display): string {
  const { basins, pond } = r.record.network.parts;
  const spilled = r.overRim / areaAt(basins[pond].storage, r.highest.value);
  const step = rulerStep(display);
  return `raise the edge ${formatLength(Math.ceil((wanted - r.below + spilled) / step) * step, display)}`;
}
