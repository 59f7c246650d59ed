import { LEDGER } from '../network/ledger.ts';
import type { RunRecord } from './record.ts';

/** Settled volume in each layer at a moment of a record, m³, by its name; empty where nothing clogs. */
export function depositsAt(record: RunRecord, t: number): Record<string, number> {
  const { clogging } = record.network.parts;
  if (clogging === undefined) return {};
  const row = record.rowAt(t);
  const stretch = record.stretchAt(row);
  const { held } = clogging.take(stretch.settings.settled.held, mediaWater(record, row, t, stretch.row));
  return Object.fromEntries(clogging.layers.map(({ name }, i) => [name, held[i]]));
}

/** Water that went up through the media from a stretch's first row to a moment, m³; even within a step. */
function mediaWater(record: RunRecord, row: number, t: number, first: number): number {
  const at = (of: number): number => record.ledger(of, LEDGER.media);
  const last = row + 1 >= record.length;
  const size = last ? 0 : record.time(row + 1) - record.time(row);
  const within = size > 0 ? ((t - record.time(row)) / size) * (at(row + 1) - at(row)) : 0;
  return at(row) + within - at(first);
}

/** Where the debris went that came with the water through the media, m³ of settled volume; `before + came = held + cleaned + passed`. */
export interface SolidsLedger {
  /** Held by the media at t = 0. */
  readonly before: number;
  readonly came: number;
  readonly held: number;
  /** Taken out by cleaning. */
  readonly cleaned: number;
  /** Gone on with the water: what no layer kept. */
  readonly passed: number;
}

/** The solids of a whole record, counted stretch by stretch. */
export function solidsLedger(record: RunRecord): SolidsLedger {
  const { clogging } = record.network.parts;
  if (clogging === undefined) return { before: 0, came: 0, held: 0, cleaned: 0, passed: 0 };
  const sum = (held: readonly number[]): number => held.reduce((a, b) => a + b, 0);
  const atStart = sum(clogging.atStart);
  let held = atStart;
  let cleaned = 0;
  let passed = 0;
  record.stretches.forEach(({ row, settings }, i) => {
    const there = settings.settled.held;
    cleaned += held - sum(there);
    const end = record.stretches[i + 1]?.row ?? record.length - 1;
    const water = record.ledger(end, LEDGER.media) - record.ledger(row, LEDGER.media);
    const taken = clogging.take(there, water);
    held = sum(taken.held);
    passed += taken.passed;
  });
  return {
    before: atStart,
    came: clogging.debris * record.ledger(record.length - 1, LEDGER.media),
    held,
    cleaned,
    passed,
  };
}
