import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/index.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { sheetOf } from '../../web/section/sheet.ts';
import { type Block, edgeBenchmark, type SheetFacts } from '../../web/sheet/block.ts';
import { settingOut } from '../../web/sheet/blocks.ts';
import { ownersCard } from '../../web/sheet/card.ts';
import { answerFrom, balanceFrom, scenarioFrom } from '../../web/sheet/from-benchmark.ts';
import { linerOf, outlineOf, stoneIn } from '../../web/sheet/quantities.ts';
import { typedLength } from '../../web/sheet/typed-mark.ts';
import { mostOf } from '../../web/sheet/water.ts';
import { handleDegrees } from '../../web/sheet/works.ts';
import { factsOf, withStones } from './sheetFacts.ts';
import { siteNames, siteText } from './sites.ts';

const courtyard = factsOf(siteText('courtyard'));
const gravel = factsOf(siteText('gravel-basin'));

const block = (facts: SheetFacts, title: string): Block => {
  const found = [...settingOut(facts), ...ownersCard(facts)].find((each) => each.title.startsWith(title));
  if (!found) throw new Error(`no block ${title}`);
  return found;
};

const row = (facts: SheetFacts, title: string, name: string): readonly string[] => {
  const found = block(facts, title).rows?.find(([first]) => first.startsWith(name));
  if (!found) throw new Error(`no row ${name} in ${title}`);
  return found;
};

const wordsOf = (blocks: readonly Block[]): string =>
  blocks
    .map(({ title, rows, steps, says }) =>
      [title, ...(rows ?? []).flat(), ...(steps ?? []), ...(says ?? [])].join('\n'),
    )
    .join('\n');

describe('heights', () => {
  // By hand from the files' own figures: the edge is at 0; the courtyard's mark lies 110 mm under it.
  test('stand from the edge where no benchmark is named, and against its reading', () => {
    expect(row(courtyard, 'Heights', 'fill mark').slice(1, 3)).toEqual(['−110 mm', '+110 mm']);
    expect(row(courtyard, 'Heights', 'broad stone (main)').slice(0, 3)).toEqual([
      'broad stone (main), 550 mm, up to +4.0 mm',
      '+620 mm',
      '−620 mm',
    ]);
    expect(row(courtyard, 'Heights', 'corner stone').slice(1, 3)).toEqual(['+630 mm', '−630 mm']);
    expect(row(courtyard, 'Heights', 'filter’s lip').slice(1, 3)).toEqual(['+1.050 m', '−1.050 m']);
    expect(row(courtyard, 'Heights', 'tee').slice(1, 3)).toEqual(['+120 mm', '−120 mm']);
    expect(row(courtyard, 'Heights', 'intake').slice(1, 3)).toEqual(['−400 mm', '+400 mm']);
  });

  test('are rod readings where the rod was read on the benchmark: a bigger reading is lower', () => {
    const bolt = { name: 'bolt in the wall', elevation: 0.4, reading: 1.3 };
    const facts = { ...courtyard, benchmark: bolt };
    // Instrument at 0.400 + 1.300 = 1.700 m: 1.700 − 0.620, 1.700 + 0.110, 1.700 + 0.400.
    expect(row(facts, 'Heights', 'broad stone').slice(1, 3)).toEqual(['+220 mm', '1.080 m']);
    expect(row(facts, 'Heights', 'fill mark').slice(1, 3)).toEqual(['−510 mm', '1.810 m']);
    expect(row(facts, 'Heights', 'intake').slice(1, 3)).toEqual(['−800 mm', '2.100 m']);
    expect(block(facts, 'Heights').says?.[0]).toContain('bolt in the wall = 0');
  });

  test('above the line of sight have no reading', () => {
    const facts = { ...courtyard, benchmark: { name: 'edge', elevation: 0, reading: 0.5 } };
    expect(row(facts, 'Heights', 'filter’s lip')[2]).toBe('above sight');
    expect(row(facts, 'Heights', 'tee')[2]).toBe('380 mm');
  });

  test('are in inches and fractions where the site is', () => {
    // 4 ft 3 in spillway, 17 in wide; mark 4 in under the edge; tee 2 ft 10 in; intake 28 in under.
    expect(row(gravel, 'Heights', 'spillway').slice(0, 3)).toEqual([
      'spillway (main), 17 in',
      '+4 ft 3 in',
      '−4 ft 3 in',
    ]);
    expect(row(gravel, 'Heights', 'fill mark').slice(1, 3)).toEqual(['−4 in', '+4 in']);
    expect(row(gravel, 'Heights', 'tee')[1]).toBe('+2 ft 10 in');
    expect(row(gravel, 'Heights', 'intake')[1]).toBe('−2 ft 4 in');
    const facts = { ...gravel, benchmark: { name: 'step', elevation: 0.1524, reading: 1.3335 } };
    // The step is 6 in over the edge and reads 4 ft 4 1/2 in: the mark at 10 in under it reads 5 ft 2 1/2 in.
    expect(row(facts, 'Heights', 'fill mark').slice(1, 3)).toEqual(['−10 in', '5 ft 2 1/2 in']);
  });

  test('go from the highest down, and each has its name once', () => {
    const names = block(courtyard, 'Heights').rows?.map(([name]) => name.split(',')[0]);
    expect(names).toEqual([
      'filter’s lip',
      'corner stone',
      'broad stone (main)',
      'tee',
      'liner’s edge',
      'fill mark',
      'intake’s lip',
    ]);
    expect(row(factsOf(siteText('storm')), 'Heights', 'overflow')[0]).toContain('bore');
  });

  test('carry what a ruler shows from the running balance', () => {
    const { balance } = courtyard;
    if (!balance) throw new Error('the courtyard runs');
    const mm = (value: number): string => `${Math.round(value * 1000)} mm`;
    expect(row(courtyard, 'Heights', 'filter’s lip')[3]).toBe(mm(balance.levels['filter'] - 1.05));
    expect(row(courtyard, 'Heights', 'broad stone')[3]).toBe(mm(balance.levels['upper pool'] - 0.62));
    expect(row(courtyard, 'Heights', 'tee')[3]).toBe('');
    // 1 1/8 in by the command's own check of this site.
    expect(row(gravel, 'Heights', 'spillway')[3]).toBe('1 1/8 in');
  });
});

describe('works', () => {
  test('handles stand at 90° × (1 − opening) from the pipe', () => {
    for (const [opening, angle] of [
      [1, 0],
      [0.8, 18],
      [0.55, 40.5],
      [0, 90],
    ])
      expect(handleDegrees(opening)).toBeCloseTo(angle, 9);
    expect(row(courtyard, 'Valves', 'bottom feed')[1]).toBe('18° from the pipe');
    expect(row(courtyard, 'Valves', 'top feed')[1]).toBe('41° from the pipe');
    expect(row(gravel, 'Valves', 'bottom feed')[1]).toBe('0° from the pipe: open');
  });

  test('pipes are listed by the size one buys', () => {
    expect(row(courtyard, 'Quantities', 'main line')[1]).toBe('7.50 m of 63 mm; 3 × 90° elbow, 1 check valve, 1 tee');
    expect(row(gravel, 'Quantities', 'main line')[1]).toBe(
      '26 ft of 2 in; 2 × 90° elbow, 2 × 45° elbow, no check valve',
    );
  });
});

describe('quantities', () => {
  test('liner: length and width, twice the depth, the allowance on both sides', () => {
    const liner = linerOf({ length: 3.8, width: 2.5 }, 0.85, 0.6);
    expect(liner.length).toBeCloseTo(6.7, 12);
    expect(liner.width).toBeCloseTo(5.4, 12);
    expect(row(courtyard, 'Quantities', 'liner')[1]).toContain('6.70 m × 5.40 m');
    // 9 ft + 2 × 32 in + 4 ft; 6 ft 6 in + the same.
    expect(row(gravel, 'Quantities', 'liner')[1]).toContain('18 ft 4 in × 15 ft 10 in');
  });

  test('length and width come from the file or its sketch', () => {
    expect(outlineOf({ sketch: { length: '10 ft', width: 2 } })).toEqual({
      length: expect.closeTo(3.048, 12),
      width: 2,
    });
    expect(outlineOf({ pond: { profile: [] } })).toBeUndefined();
    expect(row({ ...courtyard, file: undefined }, 'Quantities', 'liner')[1]).toContain('as if the pond were square');
  });

  test('gravel by hand: a layer of a straight basin', () => {
    const profile = [
      [-1, 4],
      [0, 4],
    ] as const;
    const displaced = [{ from: -1, to: -0.75, fraction: 0.6 }];
    const { solid, loose } = stoneIn({ profile, displaced, level: undefined, leak: undefined });
    expect(solid).toBeCloseTo(0.6, 12);
    expect(loose).toBeCloseTo(1, 12);
  });

  test('volume and the worth of a step are those of the checks', () => {
    expect(row(courtyard, 'Quantities', 'pond at its mark')[1]).toContain('3,779 L');
    expect(row(courtyard, 'Quantities', 'one centimeter')[1]).toBe('75 L');
    expect(row(gravel, 'Quantities', 'one inch')[1]).toBe('14 gal');
  });
});

describe('water', () => {
  test('the hose’s clock is the fill’s', () => {
    const { fill } = courtyard;
    if (!fill?.full || !fill.open) throw new Error('the courtyard fills');
    const { rows, says } = block(courtyard, 'Hose');
    expect(says?.[0]).toContain(`Open ${fill.open.clock}, shut ${fill.full.clock}`);
    const mark = rows?.find(([name]) => name === 'fill mark, −110 mm');
    expect(mark?.[1]).toBe(fill.full.clock);
  });

  test('the first start ends with the mark, and the stop test says what to do', () => {
    const { steps } = block(courtyard, 'First start');
    expect(steps?.[0]).toBe('Fill the pond to −110 mm, the fill mark.');
    expect(steps?.[2]).toMatch(/The pond falls 249 mm from its mark, and 1,765 L have to be added/);
    expect(steps?.at(-1)).toContain('mark');
    const test = block(courtyard, 'Stop test').steps?.join(' ');
    expect(test).toMatch(/rises 33 mm, nine tenths of it within 4 min 12 s/);
    expect(test).toMatch(/More than 38 mm.*does not hold it would be 115 mm/);
  });

  test('the most a pond may rise is a step of the ruler over what is expected, or more', () => {
    const { scenario } = courtyard;
    // 33.0 + 4.7 = 37.7 mm; 1/4 in + 1/32 in is 3/8 in on a ruler, as is 1/4 in alone.
    expect(mostOf(0.033, 0.0047, scenario)).toBeCloseTo(0.038, 12);
    expect(mostOf(0.00635, 0.0008, gravel.scenario)).toBeCloseTo(0.009525, 12);
    expect(mostOf(0.0063, 0, gravel.scenario)).toBeCloseTo(0.009525, 12);
  });

  test('what moves the answer most is said of what is assumed', () => {
    expect(block(courtyard, 'Assumed').says?.[0]).toMatch(
      /Most moves the roughness .*: the room left at a stop \(± 4.7 mm\)/,
    );
  });
});

describe('the owner’s card', () => {
  test('has the loss of a week, the day’s test, winter and safety', () => {
    const words = wordsOf(ownersCard(courtyard));
    expect(words).toContain('The pond falls by 50 mm each week');
    expect(words).toMatch(/pump off for a day.*mark the level/);
    expect(words).toMatch(/hard frost/);
    expect(words).toMatch(/ground-fault/);
    expect(wordsOf(ownersCard(gravel))).toContain('The pond falls by 7/8 in each week');
    expect(wordsOf(ownersCard(factsOf(siteText('low-edge'))))).toContain('is no normal loss');
  });
});

describe('what is missing', () => {
  test('is left out in words, in every site and both systems', () => {
    const texts = [...siteNames.map(siteText), withStones(siteText('courtyard'), 12)];
    for (const text of texts) {
      for (const display of ['metric', 'us'] as const) {
        const facts = factsOf(text, display);
        for (const each of [facts, bare(text)]) {
          const words = wordsOf([...settingOut(each), ...ownersCard(each)]);
          expect(words).not.toMatch(/NaN|undefined|null|Infinity|\bnone\b|\[object/);
        }
      }
    }
  });

  test('has its sentence', () => {
    const words = wordsOf(settingOut(withoutValves()));
    expect(words).toContain('This site has no valve to set.');
    expect(words).toContain('No running balance was found');
    expect(words).toContain('No filling was computed');
    expect(words).toContain('No stop was computed');
    expect(words).toContain('No fill mark is given');
    expect(words).not.toContain('filter’s lip');
    expect(words).not.toMatch(/NaN|undefined|null|Infinity/);
  });
});

/** No filter, no feed, no hose, no fill mark, no answer. */
function withoutValves(): SheetFacts {
  const { scenario, benchmark } = bare(siteText('first-start'));
  const { plumbing, pond } = scenario;
  const plain = { ...plumbing, bottomFeed: undefined, topFeed: undefined };
  return { scenario: { ...scenario, plumbing: plain, pond: { ...pond, fillMark: undefined }, hoses: [] }, benchmark };
}

/** A site without any answer. */
function bare(text: string): SheetFacts {
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return { scenario: reading.scenario, benchmark: edgeBenchmark(reading.scenario) };
}

describe('a benchmark’s typed figures', () => {
  test('are read as people write them', () => {
    expect(typedLength('1.30 m', 'metric')).toEqual({ value: 1.3 });
    expect(typedLength('1300', 'metric')).toEqual({ value: 1.3 });
    expect(typedLength('4\' 3 1/2"', 'us')).toEqual({ value: expect.closeTo(1.3081, 10) });
    expect(typedLength('', 'us')).toEqual({ value: undefined });
    expect(typedLength('1,3', 'metric')).toHaveProperty('wrong');
  });
});

describe('the drawing from a benchmark', () => {
  test.each(siteNames)('is %s itself, its scale counted from there', (name) => {
    const facts = factsOf(siteText(name));
    const by = 0.37;
    const seen = scenarioFrom(facts.scenario, by);
    const [own, moved] = [facts.scenario, seen].map((s) => sheetOf(s, 984, undefined));
    expect(moved.scale.height).toBeCloseTo(own.scale.height, 6);
    expect(moved.scale.y(0)).toBeCloseTo(own.scale.y(by), 6);
    // What is pressed is each part's outline, water course, vault and pipes all told.
    const places = ({ parts }: typeof own): string[] => parts.map(({ place }) => place);
    expect(places(moved)).toEqual(places(own));
    own.parts.forEach(({ anchor }, i) => {
      expect(moved.parts[i].anchor[0]).toBeCloseTo(anchor[0], 6);
      expect(moved.parts[i].anchor[1]).toBeCloseTo(anchor[1], 6);
    });
    const levels = balanceFrom(facts.balance, by)?.levels;
    expect(levels?.['pond']).toBeCloseTo((facts.balance?.levels['pond'] ?? 0) - by, 12);
    expect(answerFrom(facts.answer, by)?.levels['pond'].max.value).toBeCloseTo(
      (facts.answer?.levels['pond'].max.value ?? 0) - by,
      12,
    );
    // The site from its benchmark runs as it does from its datum.
    const again = balance(seen);
    for (const [basin, level] of Object.entries(again.levels))
      expect(level, basin).toBeCloseTo(levels?.[basin] ?? NaN, 6);
  });
});
