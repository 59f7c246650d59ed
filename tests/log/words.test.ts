/** What logs written by hand come to, in words. */
import { describe, expect, test } from 'vitest';
import { leakIn, readLog } from '../../sim/log/index.ts';
import { besideWords, leadWords, restWords } from '../../sim/log/words.ts';
import { siteOf } from '../readings/sites.ts';

function said(text: string, display: 'metric' | 'us' = 'metric', site = siteOf('courtyard')) {
  const leak = leakIn(site, readLog(text));
  if (!leak.ok) throw new Error(JSON.stringify(leak.problems));
  const { answer } = leak;
  return {
    answer,
    lead: leadWords(answer, display),
    rest: restWords(answer, display).join(' '),
    beside: besideWords(answer, display).map(({ line, says }) => `line ${line}: ${says}`),
  };
}

const mornings = (...mm: number[]): string =>
  mm.map((each, i) => `2031-06-${String(i + 2).padStart(2, '0')} 08:00, ${each} mm, on`).join('\n');

describe('a log says', () => {
  test('that a pond loses by its running pump alone, and where to look', () => {
    const { lead, rest, answer } = said(
      '2031-06-02 08:00, 110 mm, on\n2031-06-03 08:00, 128 mm\n2031-06-03 09:00, 92 mm, off\n2031-06-04 09:00, 95 mm\n' +
        '2031-06-04 10:00, 133 mm, on\n2031-06-05 08:00, 149 mm\n2031-06-06 08:00, 168 mm',
    );
    expect(answer.where).toBe('falls');
    expect(lead).toMatch(
      /^It loses \d+ mm a day more than evaporation and splash explain: some \d+ L a day \(\d+ to \d+ L, nine times in ten\)\.$/,
    );
    expect(rest).toMatch(
      /With the pump off it holds \(less than [\d.]+ mm a day\), so look at the falls and the stream first/,
    );
  });

  test('that nothing leaks that it could show', () => {
    const { lead, answer } = said(mornings(110, 117, 124, 131, 139, 146));
    expect(answer.verdict).toBe('holds');
    expect(lead).toMatch(
      /^No leak that this log could show: less than [\d.]+ mm a day, if any\. One of [\d.]+ mm a day or more would show\.$/,
    );
  });

  test('that it cannot tell, and which reading would decide', () => {
    const { lead, rest, answer } = said(
      '2031-06-02 08:00, 110 mm, on\n2031-06-02 14:00, 113 mm\n2031-06-02 20:00, 114 mm',
    );
    expect(answer.verdict).toBe('cannot tell');
    expect(lead).toMatch(/^This log cannot tell: from nothing up to [\d.]+ mm a day may be lost/);
    expect(rest).toMatch(/One reading more on \d+ Jun would decide it, if no water is added until then/);
  });

  test('what one more reading would decide is so: with it the log tells', () => {
    const lines = '2031-06-02 08:00, 110 mm, on\n2031-06-02 14:00, 113 mm\n2031-06-02 20:00, 114 mm';
    const { answer } = said(lines);
    const days = (answer.decides as number) / 86400;
    // The courtyard's open water is about twice the area that falls.
    const level = 114 + days * 86.4e6 * (answer.loss.value + 2.05 * answer.evaporation.value);
    const t = new Date(Date.UTC(2031, 5, 2, 20) + days * 864e5).toISOString().slice(0, 16);
    expect(said(`${lines}\n${t}, ${level.toFixed(1)} mm`).answer.verdict).not.toBe('cannot tell');
  });

  test('that it falls to a hole, and how high that is', () => {
    const { rest, answer } = said(mornings(110, 150, 182, 204, 221, 231, 238, 244));
    expect(answer.hole).toBeDefined();
    expect(rest).toMatch(
      /would stop at about −?\d+ mm below the edge \(\d+ mm to \d+ mm\): look all round at that height/,
    );
  });

  test('that the pond gains, and asks after the ruler', () => {
    expect(said(mornings(110, 106, 101, 98)).lead).toContain('less than evaporation and splash would make it');
    expect(said(mornings(110, 106, 101, 98)).rest).toContain('a ruler that stands in the water');
  });

  test('that the site names no evaporation', () => {
    const site = siteOf('courtyard');
    const { rest, answer } = said(mornings(110, 130, 150, 170), 'us', {
      ...site,
      weather: { ...site.weather, evaporation: 0 },
    });
    expect(answer.evaporation.from).toBe('unknown');
    expect(rest).toContain('common practice');
  });
});

describe('a reading that does not go with the others', () => {
  test('is told with its line and left out', () => {
    const { beside, answer } = said(mornings(110, 117, 214, 131, 138, 145, 152));
    expect(beside).toHaveLength(1);
    expect(beside[0]).toMatch(/^line 3: does not go with the others, which make it about 12[3-5] mm: left out/);
    expect(answer.verdict).toBe('holds');
  });

  test('after which all stand higher tells of water that came in', () => {
    const { beside } = said(mornings(110, 117, 124, 101, 108, 115, 122));
    expect(beside).toHaveLength(1);
    expect(beside[0]).toMatch(
      /^line 4: since line 3 the pond rose by about (29|30|31) mm beside the rest, though no rain or added water is noted/,
    );
  });

  test('is no surprise where the added water is noted: 30 mm of 7.8 m² of pond and vault', () => {
    const lines = mornings(110, 117, 124, 101, 108, 115, 122).split('\n');
    const noted = lines.map((line, i) => (i === 2 ? `${line}, added 234 L` : line)).join('\n');
    expect(said(noted).beside).toEqual([]);
    expect(said(noted).answer.verdict).toBe('holds');
    expect(said(lines.map((line, i) => (i === 3 ? `${line}, rain` : line)).join('\n')).beside).toEqual([]);
  });
});

test('two readings are too few, and say so beside what else is wrong', () => {
  const leak = leakIn(siteOf('courtyard'), readLog(`${mornings(110, 120)}\nwet`));
  expect(leak.ok).toBe(false);
  expect(leak.problems.map(({ place }) => place)).toEqual(['line 3', 'the log']);
  expect(leak.problems[1].found).toBe('two readings');
});
