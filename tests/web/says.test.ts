import { describe, expect, test } from 'vitest';
import type { Check } from '../../sim/results/answer.ts';
import { firstSentence } from '../../web/views/says.ts';

describe('the first sentence of an answer', () => {
  test('ends at the first stop before a new sentence, and leaves the rest', () => {
    const says = 'The pond stays 4.2 mm below its edge (25 mm wanted: our default). 256 L come back. Beside it: pools.';
    expect(firstSentence(says)).toEqual([
      'The pond stays 4.2 mm below its edge (25 mm wanted: our default).',
      '256 L come back. Beside it: pools.',
    ]);
  });

  test('is not broken by a decimal point', () => {
    expect(firstSentence('It stands 1.5 in below.')).toEqual(['It stands 1.5 in below.', '']);
  });

  test('and the rest make up the whole text', () => {
    const says: Check['says'] = 'It floods if the valve fails. ‘stream’ brings 236 L. So mend it.';
    expect(firstSentence(says).join(' ')).toBe(says);
  });
});
