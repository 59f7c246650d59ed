/** The dye test of a site: which flows and waters its figures are of, and what is said where there are none. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { DyeFigures, DyeTest } from '../../sim/dye/answer.ts';
import { dyeTest } from '../../sim/dye/dyeTest.ts';
import { watchDye } from '../../sim/dye/watch.ts';
import { run } from '../../sim/simulate.ts';
import { read } from './sites.ts';

const file = (): ReturnType<typeof JSON.parse> =>
  JSON.parse(readFileSync(fileURLToPath(new URL('../../scenarios/courtyard.json', import.meta.url)), 'utf8'));

/** The courtyard with parts of its file changed, an hour of it. */
function courtyard(change: (site: ReturnType<typeof file>) => void = () => {}) {
  const site = { ...file(), span: '1 h', actions: [] };
  change(site);
  return read(site);
}

function figures(answer: DyeTest): DyeFigures {
  if (!answer.fed) throw new Error(answer.says);
  return answer;
}

const saysOf = (answer: DyeTest): string => {
  expect(answer.fed).toBe(false);
  expect(answer.says).not.toMatch(/NaN|undefined|Infinity/);
  return answer.says;
};

describe('the figures of a site', () => {
  test('are of the volumes and flows that a hand would take off its file', () => {
    const { volumes, flows, T, mean, at, times } = figures(dyeTest(courtyard()));
    const { filter } = courtyard();
    const media = filter?.media;
    const pores = media?.layers.reduce((sum, { thickness, porosity }) => sum + thickness * porosity, 0) ?? 0;
    const height = media?.layers.reduce((sum, { thickness }) => sum + thickness, 0) ?? 0;
    expect(at).toBe(0);
    expect(volumes.pore).toBeCloseTo((media?.area ?? 0) * pores, 12);
    expect(volumes.gap).toBeCloseTo((media?.perimeter ?? 0) * (media?.gap ?? 0) * height, 12);
    expect(flows.media + flows.gap).toBeCloseTo(flows.bottom, 9);
    const { plenum, pore, gap, free } = volumes;
    expect(T).toBeCloseTo((plenum + pore + gap) / flows.bottom + free / (flows.bottom + flows.top), 6);
    expect(mean).toBeCloseTo(T, 6);
    expect(times.media).toBeCloseTo(pore / flows.media, 9);
  });

  test('at a moment of a deed are of the flows right after it', () => {
    const site = courtyard((s) => {
      s.actions = [{ at: '10 min', do: 'bottom valve', to: 0.2 }];
    });
    const { record } = run(site);
    const before = figures(dyeTest(site, 599, record));
    const after = figures(dyeTest(site, 600, record));
    expect(after.at).toBe(600);
    expect(after.flows.bottom).toBeLessThan(0.9 * before.flows.bottom);
    // The record has two rows at the moment: the flows before the valve turns, and those right after it.
    const { bottom } = record.network.parts.circuit.flow;
    expect(after.flows.bottom).toBeCloseTo(record.flow(record.rowAt(600), bottom), 9);
    expect(before.flows.bottom).toBeCloseTo(record.flow(record.rowAt(600) - 1, bottom), 6);
  });

  test('begin where the filter is first fed', () => {
    const site = courtyard((s) => {
      s.start = 'standing';
      s.pump.running = false;
      s.actions = [{ at: '10 min', do: 'pump', to: 'on' }];
    });
    const { record } = run(site);
    // A minute after the start the flows stand to a thousandth where they stand ten minutes later.
    const [first, later] = [undefined, 1300].map((at) => figures(dyeTest(site, at, record)));
    expect(first.at).toBeGreaterThan(600);
    expect(Math.abs(first.flows.bottom / later.flows.bottom - 1)).toBeLessThan(2e-3);
    expect(saysOf(dyeTest(site, 300, record))).toContain('pump stands');
  });

  test('are of a gap that lift has opened', () => {
    const light = courtyard((s) => {
      Object.assign(s.filter.media, { submergedWeight: 5, holdDown: 0, gap: 0.005 });
      for (const layer of s.filter.media.layers) layer.grain = 0.0003;
    });
    const heavy = courtyard((s) => {
      Object.assign(s.filter.media, { submergedWeight: 5000, holdDown: 0, gap: 0.005 });
      for (const layer of s.filter.media.layers) layer.grain = 0.0003;
    });
    const [lifted, held] = [light, heavy].map((site) => figures(dyeTest(site)));
    expect(lifted.volumes.gap).toBeGreaterThan(1.05 * held.volumes.gap);
    expect(lifted.channeled).toBeGreaterThan(held.channeled);
    // Where fine media hold the water back, what goes round overtakes it.
    expect(lifted.says).toContain('overtakes');
  });

  test('are of the pores that deposit has left', () => {
    const dirty = courtyard((s) => {
      s.span = '30 d';
      s.debris = 2e-6;
      for (const layer of s.filter.media.layers) layer.capture = 3;
    });
    const { record } = run(dirty);
    const [clean, later] = [0, 29 * 86400].map((t) => figures(dyeTest(dirty, t, record)));
    expect(later.volumes.pore).toBeLessThan(0.99 * clean.volumes.pore);
  });

  test('say that the class is half what was assumed', () => {
    const says = (tanks: number): string =>
      dyeTest(
        courtyard((s) => {
          s.filter.media.tanks = tanks;
        }),
      ).says;
    expect(says(8)).toContain('8 equal mixed tanks in series');
    expect(says(1)).toContain('one mixed tank');
    expect(
      figures(
        dyeTest(
          courtyard((s) => {
            s.filter.media.tanks = 30;
          }),
        ),
      ).baffling,
    ).toBeGreaterThan(figures(dyeTest(courtyard())).baffling);
  });
});

describe('at the switching of a pump', () => {
  const site = courtyard((s) => {
    s.start = 'standing';
    s.pump.running = false;
    s.actions = [
      { at: '10 min', do: 'pump', to: 'on' },
      { at: '30 min', do: 'pump', to: 'off' },
    ];
  });
  const { record } = run(site);

  test('nothing flows yet as it starts: what to do is said, and doing it gives figures', () => {
    const says = 'nothing flows through the filter yet: pour a minute later.';
    expect(saysOf(dyeTest(site, 600, record))).toBe(`The pump starts at this moment and ${says}`);
    expect(saysOf(dyeTest(site, 601, record))).toBe(`The pump started 1 s ago and ${says}`);
    const watch = watchDye(site, record, 600, 1e-3);
    expect(watch.says).toBe(`The pump starts at this moment and ${says}`);
    expect(figures(dyeTest(site, 660, record)).says).toMatch(/^Water stays in the filter/);
  });

  test('flows that are rising or about to end are held, and it is said that they do not last', () => {
    const { bottom } = record.network.parts.circuit.flow;
    const rising = figures(dyeTest(site, 602, record));
    expect(rising.says).toMatch(/^The pump is still coming to its speed, .* pour a minute later\. Water stays/);
    expect(rising.flows.bottom).toBeLessThan(0.9 * figures(dyeTest(site, 660, record)).flows.bottom);
    const stops = figures(dyeTest(site, 1800, record));
    expect(stops.says).toMatch(/^The pump stops at this moment, .* pour before it stops\. Water stays/);
    expect(stops.flows.bottom).toBeCloseTo(record.flow(record.rowAt(1800), bottom), 9);
    expect(figures(dyeTest(site, 1799, record)).says).toMatch(/^Water stays/);
    expect(saysOf(dyeTest(site, 1860, record))).toContain('The pump stands');
  });

  test('a moment outside the run is no moment at which the pump stands', () => {
    for (const at of [-5, 3601, Number.NaN]) expect(saysOf(dyeTest(site, at, record))).toContain('outside the run');
    expect(saysOf(dyeTest(site, 0, record))).toContain('The pump stands');
  });
});

describe('a site without figures says what follows', () => {
  test.each([
    [
      'no filter',
      'no filter',
      (s: ReturnType<typeof file>) => {
        delete s.filter;
        s.plumbing.bottomFeed.inlet = '0.45 m';
        s.plumbing.topFeed.to = undefined;
      },
    ],
    ['no media', 'one mixed tank', (s: ReturnType<typeof file>) => void delete s.filter.media],
    ['no bottom feed', 'no bottom feed', (s: ReturnType<typeof file>) => void delete s.plumbing.bottomFeed],
    [
      'a pump that never runs',
      'at any moment of this run',
      (s: ReturnType<typeof file>) => {
        s.start = 'standing';
        s.pump.running = false;
      },
    ],
    [
      'a shut bottom valve',
      'at any moment of this run',
      (s: ReturnType<typeof file>) => {
        s.plumbing.bottomFeed.valve = 0;
      },
    ],
  ])('%s', (_, words, change) => {
    expect(saysOf(dyeTest(courtyard(change)))).toContain(words);
  });

  test('a shut valve, asked at a moment, and a filter that drains', () => {
    expect(
      saysOf(
        dyeTest(
          courtyard((s) => {
            s.plumbing.bottomFeed.valve = 0;
          }),
          60,
        ),
      ),
    ).toContain('valve is shut');
    const drains = courtyard((s) => {
      s.plumbing.main.checkValve = false;
      s.actions = [{ at: '10 min', do: 'pump', to: 'off' }];
    });
    expect(saysOf(dyeTest(drains, 640))).toContain('runs back');
  });

  test('no gap is no reason: all goes through', () => {
    const answer = figures(
      dyeTest(
        courtyard((s) => {
          s.filter.media.gap = 0;
        }),
      ),
    );
    expect(answer.channeled).toBe(0);
    expect(answer.times.gap).toBe(null);
    expect(answer.says).toContain('All of it goes through the media');
    expect(Math.max(...answer.E.round)).toBe(0);
  });
});
