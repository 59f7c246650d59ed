import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withValuesAt } from '../../sim/studies/place.ts';
import { answerTo } from '../../web/engine/answers.ts';
import type { FileEdits } from '../../web/engine/protocol.ts';
import { headlineOf } from '../../web/state/headline.ts';

const file: unknown = JSON.parse(
  readFileSync(new URL('../../scenarios/teaching-filter.json', import.meta.url), 'utf8'),
);

function toldOf(edits: FileEdits): string {
  const text = JSON.stringify(withValuesAt(file, edits));
  const outcome = answerTo({ text, display: undefined, depth: 'quick', about: 'filter' });
  if (outcome.kind !== 'answered') throw new Error(JSON.stringify(outcome));
  return headlineOf('filter', outcome, undefined).more;
}

test('a run in which the media clog is not told by their clean share alone', () => {
  expect(toldOf([])).not.toContain('clean media');
  expect(
    toldOf([
      ['debris', 1e-4],
      ['span', '30 d'],
    ]),
  ).toMatch(/with clean media: at the end of this run, with what has settled by then, \d+\s% slips round/);
});
