import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { care } from '../../sim/clogging/care.ts';
import { wasteCourse } from '../../sim/pondwater/course.ts';
import { solidsLedger } from '../../sim/results/deposits.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { readSite } from '../../sim/scenario/read.ts';
import { run } from '../../sim/simulate.ts';
import { siteFile } from '../network/randomSite.ts';

const waste = fc.record({
  debris: fc.constantFrom(0, 1e-7, 1e-5, 1e-3),
  load: fc.constantFrom(0, 1e-7),
  concentration: fc.constantFrom(0, 1e-2),
  capture: fc.constantFrom(0, 0.3, 20),
  removal: fc.constantFrom(0, 0.002, 1),
});

// biome-ignore lint/suspicious/noExplicitAny: a file in the making
type File = any;

const dirtySite = fc.tuple(siteFile, waste).map(([site, { capture, removal, ...more }]) => {
  const file: File = { ...structuredClone(site), ...more };
  const media = file.filter?.media;
  if (media) {
    media.removal = removal;
    for (const layer of media.layers) layer.capture = capture;
  }
  const reading = readSite(JSON.parse(JSON.stringify(file)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
});

const failed = (error: unknown): void => {
  if (!(error instanceof RunFailure)) throw error;
};

describe('any site with debris and waste', () => {
  test('keeps the mass of both, or is capped with its cause named', () => {
    fc.assert(
      fc.property(dirtySite, (s) => {
        try {
          const { record } = run(s);
          const { came, held, cleaned, passed } = solidsLedger(record);
          expect(Math.abs(came - held - cleaned - passed)).toBeLessThanOrEqual(1e-9 * came + 1e-18);
          const { ledger, concentration } = wasteCourse(s, record);
          const all = ledger.start + ledger.load;
          expect(Math.abs(all - ledger.end - ledger.removed - ledger.lost)).toBeLessThanOrEqual(1e-9 * all);
          expect(concentration.every((c) => c >= 0 && Number.isFinite(c))).toBe(true);
        } catch (error) {
          failed(error);
        }
      }),
      { numRuns: 60, seed: 20310602 },
    );
  }, 60_000);

  test('says when to clean it without a figure that is none', () => {
    fc.assert(
      fc.property(dirtySite, (s) => {
        try {
          const answer = care(s);
          expect(answer.says).toMatch(/\.$/);
          expect(answer.says).not.toMatch(/NaN|Infinity|undefined/);
          if (answer.care)
            for (const column of [answer.course.t, answer.course.split, answer.course.channeled, answer.course.lift])
              expect(column.every(Number.isFinite)).toBe(true);
        } catch (error) {
          failed(error);
        }
      }),
      { numRuns: 60, seed: 20310603 },
    );
  }, 60_000);
});
