import { describe, expect, test } from 'vitest';
import { kept } from '../../web/state/one-line.ts';

/** Where a line may break, as '|'. */
const breaks = (says: string): string => kept(says).replaceAll(' ', '|').replaceAll('\u00a0', ' ');

describe('what stays on one line', () => {
  test.each([
    ['Of it, 4.1 % slip round.', 'Of|it,|4.1 %|slip|round.'],
    ['the water stays 1 min 8 s in the pores', 'the|water|stays|1 min 8 s|in|the|pores'],
    ['within 2 h 5 min', 'within|2 h 5 min'],
    ['stays 3 ft 6 1/2 in below', 'stays|3 ft 6 1/2 in|below'],
    ['167 L/min or 2,640 gph', '167 L/min|or|2,640 gph'],
    ['at 1.2 m³/h and 2.5 mm', 'at|1.2 m³/h|and|2.5 mm'],
    ['at 15 °C', 'at|15 °C'],
  ])('%s', (says, broken) => {
    expect(breaks(says)).toBe(broken);
  });

  test('a figure that is followed by a word is no quantity', () => {
    expect(breaks('82 of 100 marks, 7 steps, 2 mats, 1 main line')).toBe(
      '82|of|100|marks,|7|steps,|2|mats,|1|main|line',
    );
  });
});
