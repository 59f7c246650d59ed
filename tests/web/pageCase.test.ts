import { describe, expect, test } from 'vitest';
import { answerTo, givenFor } from '../../web/engine/answers.ts';
import type { Answered, OtherValve } from '../../web/engine/protocol.ts';
import { type Case, caseOf, differenceWords, moved } from '../../web/state/case.ts';
import { shownRecord } from '../../web/state/shown.ts';
import { siteText } from './sites.ts';

function answered(text: string, depth: 'quick' | 'full' = 'quick'): Answered {
  const outcome = answerTo({ text, display: undefined, depth, about: 'stop' });
  if (outcome.kind !== 'answered') throw new Error(outcome.kind);
  return outcome;
}

async function otherValve(text: string): Promise<OtherValve> {
  const given = await givenFor({ want: 'other valve', text });
  if (given.kind !== 'other valve') throw new Error(given.kind);
  return given;
}

const highest = ({ series }: OtherValve): number => Math.max(...series.levels['pond']!);

describe('the stop with the check valve otherwise', () => {
  test('is the trial behind the check of a failed valve where the site’s own holds', async () => {
    const text = siteText('courtyard');
    const { answer, scenario } = answered(text, 'full');
    const other = await otherValve(text);
    const check = answer.checks.find(({ name }) => name === 'drain-back, valve failed')!;
    const edge = Math.min(...scenario.pond.rim.crest.map(([, z]) => z));
    expect(other.valve).toBe('failed');
    expect(edge - highest(other)).toBeCloseTo(check.value!, 4);
    expect(other.fails).toBe(check.value! < 0);
    expect(other.series.t[0]).toBe(0);
  });

  test('is a sound valve where the site has none', async () => {
    const text = siteText('courtyard-no-check-valve');
    const { stops, scenario } = answered(text);
    const other = await otherValve(text);
    const edge = Math.min(...scenario.pond.rim.crest.map(([, z]) => z));
    expect(other.valve).toBe('sound');
    expect(edge - highest(other)).toBeCloseTo(stops!.sound.below, 4);
  });

  test('is a fault as data where no level is kept', async () => {
    const { pond, autofill, ...rest } = JSON.parse(siteText('courtyard'));
    const { fillMark, ...bare } = pond;
    const given = await givenFor({ want: 'other valve', text: JSON.stringify({ ...rest, pond: bare }) });
    expect([fillMark !== undefined || autofill !== undefined, given.kind]).toEqual([true, 'fault']);
  });
});

test('columns are moved in time and end at a moment', () => {
  const series = { t: Float64Array.of(0, 10, 20), levels: { pond: Float64Array.of(1, 2, 3) }, flows: {} };
  expect(moved(series, 100, 110)).toEqual({
    t: Float64Array.of(100, 110),
    levels: { pond: Float64Array.of(1, 2) },
    flows: {},
  });
  expect([...moved(series, 5).t]).toEqual([5, 15, 25]);
});

describe('a case', () => {
  const site = answered(siteText('courtyard'));
  const made = caseOf(site.scenario, shownRecord(site, undefined));

  test('tells what its ledger and its highest level tell', () => {
    const { rim, overflow, filterRim, edges } = site.answer.ledger.out;
    expect(made.lost).toBe(rim + overflow + filterRim + edges);
    expect(made.below).toBeCloseTo(-site.answer.levels['pond']!.max.value, 9);
    expect(made.stop).toBe(6 * 3600);
  });

  test('differs from another in one sentence: highest level, what runs back, loss', () => {
    const kept: Case = { ...made, below: 0.08, back: 0.26, lost: 0 };
    expect(differenceWords({ ...kept, below: 0.068, back: 0.25, lost: 0.151 }, kept, 'metric')).toBe(
      'At its highest the pond is 68 mm below its edge, 12 mm higher than in the case kept; ' +
        '250 L run back, 10 L less; 151 L are lost, 151 L more.',
    );
    expect(differenceWords(kept, kept, 'metric')).toBe(
      'At its highest the pond is 80 mm below its edge, as in the case kept; ' +
        '260 L run back, as much as there; nothing is lost, as much as there.',
    );
  });
});
