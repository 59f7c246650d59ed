import { describe, expect, test } from 'vitest';
import { run, simulate } from '../../sim/simulate.ts';
import { expandSketch } from '../../sim/sketch/expand.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { least, placesAssumed, siteOf } from './sites.ts';

const INCH = 0.0254;

/** What is expanded from the least sketch with other numbers and parts beside. */
const expanded = (numbers: object = {}, beside: object = {}) => {
  const { file, problems } = expandSketch({ ...beside, sketch: { ...least(), ...numbers } });
  expect(problems).toEqual([]);
  return (place: string) => valueAt(file, place);
};

test('the edge stays where it is when a fill mark is given beside the sketch, typed or assumed', () => {
  const edgeAt = (numbers: object, beside: object): unknown => expanded(numbers, beside)('pond.rim.crest[0][1]');
  for (const numbers of [{}, { edge: '3 in' }]) {
    expect(edgeAt(numbers, {})).toBeDefined();
    expect(edgeAt(numbers, { pond: { fillMark: '-1 in' } })).toEqual(edgeAt(numbers, {}));
  }
});

describe('the least sketch', () => {
  test('is a site that runs its day, pump stop and all, and closes its account', () => {
    const { answer } = simulate(siteOf({ sketch: least() }));
    expect(answer.ledger.closure).toBeLessThan(1e-9);
    expect(answer.flows['main stone'].max.value).toBeGreaterThan(0);
    expect(answer.events.map(({ what }) => what)).toEqual(expect.arrayContaining(['pump off', 'pump on']));
    expect(answer.checks.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['drain-back', 'first start', 'falls']),
    );
  });

  test('is laid out from the water line, a stone halfway between lip and edge', () => {
    const at = expanded();
    expect(at('pond.fillMark')).toBe(0);
    expect(at('filter.lip.crest[0][1]')).toBeCloseTo(30 * INCH, 9);
    expect(at('watercourse[0].stones[0].crest[0][1]')).toBeCloseTo((33 * INCH) / 2, 9);
    expect(at('plumbing.tee')).toBe(at('plumbing.bottomFeed.inlet'));
    expect(at('vault.profile[0][0]')).toBeCloseTo(-36 * INCH, 9);
    expect(at('pump.minimum')).toBeCloseTo(-24 * INCH, 9);
    expect(at('watercourse[1]')).toBeUndefined();
  });

  test.each([
    ['2500 gph', '1 1/2 in', '1 1/4 in'],
    ['4500 gph', '2 in', '1 1/2 in'],
    ['10000 gph', '3 in', '2 in'],
    ['18000 gph', '4 in', '3 in'],
    ['18100 gph', '6 in', '4 in'],
  ])('with a pump of %s has a main line of %s and feeds of %s (common practice, no source)', (flow, main, feed) => {
    const at = expanded({ pump: { flow, head: '18 ft' } });
    expect([at('plumbing.main.size'), at('plumbing.topFeed.size')]).toEqual([main, feed]);
  });
});

describe('expanding', () => {
  test('twice changes nothing', () => {
    const raw = { title: 'Twice', sketch: { ...least(), stream: '5 ft', autofill: 'vault' } };
    const once = expandSketch(raw).file;
    expect(expandSketch(once)).toEqual({ file: once, problems: [], assumed: [] });
    expect(JSON.stringify(expandSketch(raw).file)).toBe(JSON.stringify(once));
    expect(Object.keys(once as object)).not.toContain('sketch');
  });

  test('makes the same water flow as the whole file it writes', () => {
    const raw = { sketch: least() };
    const { assumed: _a, sketched: _s, ...fromSketch } = siteOf(raw);
    const { assumed: _b, ...fromFile } = siteOf(expandSketch(raw).file);
    expect(fromSketch).toEqual(fromFile);
  });

  test('leaves a file without a sketch, and the file it reads, as they are', () => {
    const whole = { title: 'No sketch' };
    expect(expandSketch(whole).file).toBe(whole);
    const raw = {
      sketch: least(),
      pond: {
        rim: {
          crest: [
            [0, 0.1],
            [1, 0.1],
          ],
        },
      },
    };
    const before = structuredClone(raw);
    expandSketch(raw);
    expect(raw).toEqual(before);
  });

  test('keeps what was typed in its own unit', () => {
    const at = expanded({ lip: '28 in', edge: '2 1/2 in', stream: '5 ft', pipe: { size: '63 mm', length: '7.5 m' } });
    expect(at('pond.shape.length')).toBe('16 ft');
    expect(at('pump.curve.flow')).toBe('3600 gph');
    expect(at('pond.rim.crest[0][1]')).toBe('2 1/2 in');
    expect(at('plumbing.main.length')).toBe('7.5 m');
    expect(at('plumbing.main.size')).toBe('63 mm');
    expect(at('watercourse[1].length')).toBe('5 ft');
  });

  test('shows a site in the units it was typed in, unless the file says', () => {
    const metric = { length: '5 m', width: '3.4 m', depth: 0.8, pump: { flow: '13 m3/h', head: '5 m' } };
    expect(expanded()('display')).toBe('us');
    expect(expanded(metric)('display')).toBe('metric');
    expect(expanded(metric, { display: 'us' })('display')).toBe('us');
  });

  test('has the tee at the only feed’s end', () => {
    expect(expanded({ feeds: 'top' })('plumbing.bottomFeed')).toBeUndefined();
    expect(expanded({ feeds: 'bottom' })('plumbing.topFeed')).toBeUndefined();
    for (const feeds of ['top', 'bottom'])
      expect(run(siteOf({ sketch: { ...least(), feeds } })).record.length).toBeGreaterThan(2);
  });

  test('does without a check valve, and its loss', () => {
    const at = expanded({ pipe: { checkValve: 'no' } });
    expect([at('plumbing.main.checkValve'), at('plumbing.main.k')]).toEqual([false, undefined]);
  });

  test('fits the pump’s stop into a span that is shorter than the day', () => {
    const { actions, span } = siteOf({ span: '2 h', sketch: least() });
    expect(span).toBe(7200);
    expect(actions.map((action) => 'timing' in action && 'at' in action.timing && action.timing.at)).toEqual([
      1800, 2100,
    ]);
  });
});

describe('parts beside a sketch', () => {
  test('are laid over key by key, lists whole', () => {
    const at = expanded({}, { pump: { minimum: -0.5 }, intake: { width: '2 ft' }, actions: [] });
    expect([at('pump.minimum'), at('pump.suction') as number]).toEqual([-0.5, expect.closeTo(-32 * INCH, 9)]);
    expect([at('intake.width'), at('intake.blockage'), at('actions')]).toEqual(['2 ft', 0.1, []]);
  });

  test('take away what says the same in another way', () => {
    const at = expanded({}, { plumbing: { main: { diameter: 0.06 } }, pump: { power: '200 W' } });
    expect([at('plumbing.main.size'), at('pump.efficiency')]).toEqual([undefined, undefined]);
    siteOf({ sketch: least(), plumbing: { main: { diameter: 0.06 } }, pump: { power: '200 W' } });
  });

  test('have what is derived follow from them', () => {
    const lip = [
      [0, 1],
      [0.9, 1],
    ];
    const at = expanded(
      {},
      {
        filter: { lip: { crest: lip } },
        pond: {
          rim: {
            crest: [
              [0, 0.2],
              [1, 0.2],
            ],
          },
        },
      },
    );
    expect(at('plumbing.topFeed.outlet')).toBeCloseTo(1 + 4 * INCH, 9);
    expect(at('watercourse[0].stones[0].crest[0][1]')).toBeCloseTo(0.6, 9);
    expect(at('filter.media.area')).toBeCloseTo(24 * INCH * (0.9 + 6 * INCH), 9);
    expect(at('vault.profile[1][0]')).toBeCloseTo(0.2, 9);
    const narrow = expanded({}, { plumbing: { main: { size: '1 in' } } });
    const [[, wide], [, less]] = [expanded(), narrow].map((of) => of('watercourse[0].stones[0].crest') as number[][]);
    expect(less[0]).toBeLessThan(wide[0]);
  });

  test('may be a whole pond by its profile', () => {
    const profile = [
      [-0.9, 8],
      [0, 14],
    ];
    const site = siteOf({ sketch: least(), pond: { profile } });
    expect(site.pond.profile).toEqual(profile);
    expect(site.vault.profile[0][0]).toBeCloseTo(-0.9 - 6 * INCH, 9);
  });
});

describe('what is assumed', () => {
  test('is listed with value, band and origin, and goes off the list when typed', () => {
    const before = siteOf({ sketch: least() });
    expect(before.assumed.find(({ place }) => place === 'sketch.lip')).toEqual({
      place: 'sketch.lip',
      value: 0.762,
      band: [0.6096, 0.9144],
      from: 'sketch',
    });
    const typed = {
      lip: '30 in',
      pipe: { length: '24 ft', elbows: 3, checkValve: 'yes' },
      climate: 'cool',
      rock: 'usual',
    };
    const after = placesAssumed(siteOf({ sketch: { ...least(), ...typed } }));
    for (const key of ['lip', 'pipe.length', 'pipe.elbows', 'pipe.checkValve', 'climate', 'rock'])
      expect([placesAssumed(before).includes(`sketch.${key}`), after.includes(`sketch.${key}`)]).toEqual([true, false]);
    expect(after).toContain('sketch.pipe.size');
    expect(after).not.toContain('plumbing.main.checkValve');
  });

  test('goes off the list where a part beside the sketch settles it', () => {
    const { watercourse } = expandSketch({ sketch: least() }).file as { watercourse: unknown };
    const after = placesAssumed(
      siteOf({ sketch: least(), watercourse, intake: { width: 0.6, elevation: -0.1, blockage: 0 } }),
    );
    for (const key of ['stone', 'poolArea', 'poolEdge', 'stream', 'splash', 'intakeLip', 'intakeWidth', 'blockage'])
      expect(after).not.toContain(`sketch.${key}`);
    expect(after).toContain('sketch.lip');
  });

  test('holds the scenario’s own defaults, each once, those of a given part as its own', () => {
    const { assumed } = siteOf({ sketch: least(), filter: { media: { submergedWeight: 50 } } });
    const places = assumed.map(({ place }) => place);
    expect(new Set(places).size).toBe(places.length);
    const from = (place: string) => assumed.find((each) => each.place === place)?.from;
    expect(from('watercourse[0].stones[0].cd')).toBe('sketch');
    expect(from('filter.media.gap')).toBe('default');
    expect(from('filter.media.submergedWeight')).toBeUndefined();
  });
});
