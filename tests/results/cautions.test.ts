/** What is told before the checks, and that a valid site that can't work still runs and says so first. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { site } from '../network/randomSite.ts';
import { checked, siteWith, upright } from './checks/site.ts';

const cautions = (scenario: Scenario): string[] => simulate(scenario).answer.cautions;

/** What every site is asked, in the order in which it is told. */
const NAMES = [
  'drain-back',
  'drain-back, valve failed',
  'drain-back in rain',
  'first start',
  'dammed falls',
  'falls',
  'split',
  'channeling',
  'headroom',
  'reach',
  'velocity',
  'duty',
  'turnover',
  'volume',
  'filling',
  'loss',
];

describe('a run', () => {
  test('answers every check in its order', () => {
    expect(simulate(checked(upright())).answer.checks.map(({ name }) => name)).toEqual(NAMES);
  });

  test('leaves out what there is nothing to ask', () => {
    const bare = siteWith((file) => {
      delete file.filter;
      delete file.watercourse;
      delete file.supply;
      delete file.plumbing.bottomFeed;
    });
    const names = simulate(bare).answer.checks.map(({ name }) => name);
    for (const name of ['falls', 'split', 'channeling', 'headroom', 'filling']) expect(names).not.toContain(name);
    for (const name of ['drain-back', 'reach', 'velocity', 'duty', 'volume', 'loss']) expect(names).toContain(name);
  });

  test('tells figures, limits and margins that belong together', () => {
    for (const check of simulate(checked(upright())).answer.checks) {
      expect(check.says).toMatch(/\.$/);
      if (check.limit === null) expect([check.verdict, check.margin]).toEqual(['told', null]);
      else expect(Math.abs(check.margin ?? 0)).toBeCloseTo(Math.abs((check.value ?? 0) - check.limit), 12);
    }
  });
});

describe('water that a run loses over an edge', () => {
  test('is told: a hose that nobody shuts', () => {
    const site = siteWith((file) => {
      file.pond.level = -0.02;
      file.supply = { hose: { flow: '30 L/min', on: true } };
      file.span = '6 h';
    });
    const { cautions: told, ledger } = simulate(site).answer;
    expect(ledger.out.rim).toBeGreaterThan(1);
    const [, liters] = /^This run loses water over edges: ([\d,]+) L over the pond’s\.$/m.exec(told.join('\n')) ?? [];
    expect(Number(liters?.replace(',', ''))).toBe(Math.round(1000 * ledger.out.rim));
  });

  test('is not where there is none', () => {
    expect(cautions(checked(upright())).join()).not.toContain('This run loses');
  });
});

describe('a site that can’t work runs and says so first', () => {
  // biome-ignore lint/suspicious/noExplicitAny: a site's file
  const hopeless: [string, (file: any) => void, RegExp][] = [
    [
      'a pump too weak',
      (file) => (file.pump.curve = { flow: '100 L/min', head: 0.9 }),
      /^The pump can’t lift the water/,
    ],
    [
      'both valves shut',
      (file) => {
        file.plumbing.bottomFeed.valve = 0;
        file.plumbing.topFeed.valve = 0;
      },
      /^Both valves are shut/,
    ],
    [
      'a pond under its intake',
      (file) => (file.pond.level = -0.35),
      /^The pond at −350 mm stands under its intake’s lip/,
    ],
    [
      'no water',
      (file) => {
        file.pond.level = 'empty';
        delete file.supply;
      },
      /^There is no water on this site/,
    ],
    [
      'everything leaking away',
      (file) => {
        file.plumbing.leak = { elevation: -0.5, area: 0.02 };
      },
      /^\d+ % of the water the pump lifts is lost on its way, most of it through leaks/,
    ],
    [
      'an edge of the filter under its lip’s water',
      (file) => {
        file.filter.lip.crest[1][0] = 0.02;
        file.filter.rim.crest = [
          [0, 1.005],
          [2.6, 1.005],
        ];
      },
      /most of it over edges/,
    ],
    [
      'a pond that leaks dry within the run',
      (file) => (file.pond.leak = { elevation: -0.6, area: 2e-3 }),
      /^Within the run the pond falls under its intake’s lip, most of its water lost by leaks/,
    ],
  ];
  test.each(hopeless)('%s', (_, change, sentence) => {
    const { answer } = simulate(siteWith(change));
    expect(answer.cautions[0]).toMatch(sentence);
    expect(answer.ledger.closure).toBeLessThan(1e-9);
  });

  test('and nothing of the kind on one that works', () => {
    expect(cautions(checked(upright()))).toEqual(
      cautions(checked(upright())).filter((sentence) => /^(Less than|Beside the media)/.test(sentence)),
    );
  });
});

test('whatever the site, its sentences hold figures, or the run says why it has no end', { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(site, (scenario) => {
      try {
        const { answer } = simulate(scenario);
        for (const check of answer.checks) {
          expect(check.value === null || Number.isFinite(check.value)).toBe(true);
          expect(check.says + check.mend).not.toMatch(/NaN|Infinity|undefined/);
        }
        expect(answer.cautions.join(' ')).not.toMatch(/NaN|Infinity|undefined/);
      } catch (error) {
        expect(error).toBeInstanceOf(RunFailure);
      }
    }),
    { numRuns: 15, seed: 3 },
  );
});

describe('a caution', () => {
  test('names a start that is not at rest, and how to begin at rest', () => {
    const standing = (checkValve: boolean) =>
      siteWith((file) => {
        file.start = 'standing';
        file.plumbing.main.checkValve = checkValve;
      });
    expect(cautions(standing(false)).join(' ')).toContain('"start": "overnight"');
    expect(cautions(standing(true)).join(' ')).not.toContain('overnight');
  });

  test('tells heads under 20 mm once, by the names of the stones', () => {
    const told = cautions(checked(upright())).filter((sentence) => sentence.startsWith('Less than 20 mm'));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('‘side stone’');
  });

  test('counts a splash of over 0.1 % in liters a day', () => {
    // 0.2 % of 3 L/s would be 518 L a day.
    const splashing = siteWith((file) => (file.watercourse[0].stones[0].splash = 0.002));
    const { flows } = balanceOf(splashing)!.answer;
    const liters = Math.round(0.002 * flows['broad stone'] * 86400 * 1000);
    expect(cautions(splashing).join(' ')).toContain(
      `A splash of 0.2 % at ‘broad stone’ is ${liters.toLocaleString('en-US')} L a day`,
    );
    const little = siteWith((file) => (file.watercourse[0].stones[0].splash = 0.001));
    expect(cautions(little).join(' ')).not.toContain('splash');
  });

  test('says that rain by month is even', () => {
    const rain = siteWith((file) => (file.weather = { rain: Array(12).fill('50 mm') }));
    expect(cautions(rain).join(' ')).toContain('falls evenly');
  });

  test('says that the pump starves behind leaves on the screen', () => {
    const blind = siteWith((file) => (file.intake.blockage = 0.97));
    expect(cautions(blind).join(' ')).toContain('draws air');
  });

  test('measures what stands open beside the media', () => {
    const open = siteWith((file) => {
      file.filter.media.area = 0.35;
      file.filter.media.perimeter = 2.4;
    });
    // 0.5 − 0.35 − 2.4 × 0.002 m².
    expect(cautions(open).join(' ')).toContain('0.15 m² of the filter’s plan');
  });

  test('says that media and gap have no room in the filter', () => {
    const tight = siteWith((file) => {
      file.filter.media.gap = '60 mm';
      file.filter.media.perimeter = 2.6;
    });
    // 0.49 + 2.6 × 0.06 = 0.646 m² in 0.5 m².
    expect(cautions(tight).join(' ')).toContain('ask for 0.65 m², but the filter has 0.50 m²');
  });
});
