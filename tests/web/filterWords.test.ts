/** The passage of the water through a filter, what is told of it, and the marks that show it. */
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import { porositiesLeft } from '../../sim/network/clogging.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { dyeGiven } from '../../web/engine/filter-answers.ts';
import type { DyeGiven } from '../../web/engine/filter-asked.ts';
import { depositMarks } from '../../web/filter/deposit.ts';
import { dyedAt, tankBounds } from '../../web/filter/dye-marks.ts';
import { dyePlotMarks, dyeScale } from '../../web/filter/dye-plot.ts';
import { playedAt, whereWords } from '../../web/filter/dye-words.ts';
import { explanation } from '../../web/filter/explanation.ts';
import { coursesOf, placeOf } from '../../web/filter/hundred.ts';
import { factorWords, passageAt, watchedAt } from '../../web/filter/passage.ts';
import { differencesOf } from '../../web/filter/sides-words.ts';
import { bedAtRest } from '../../web/section/bed.ts';
import { closeUpOf, vesselOf, vesselScale } from '../../web/section/close-up.ts';
import { sceneOf } from '../../web/section/layout.ts';
import { chosen } from '../../web/state/dials-turned.ts';
import type { Moment } from '../../web/state/moment.ts';
import { siteText } from './sites.ts';

type Edits = readonly (readonly [string, unknown])[];

function siteWith(edits: Edits = []): Scenario {
  const reading = readScenario(JSON.stringify(chosen(JSON.parse(siteText('courtyard')), edits)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** As the site runs, in balance. */
function runningOf(s: Scenario): Moment {
  const { levels, flows } = balance(s);
  return { t: 0, levels, flows };
}

const seen = (s: Scenario, flows: Record<string, number> = {}): string => {
  const moment = runningOf(s);
  return explanation({ scenario: s, moment: { ...moment, flows: { ...moment.flows, ...flows } } }).join(' ');
};

const FINE = [
  ['filter.media.layers.0.grain', '0.25 mm'],
  ['filter.media.layers.0.thickness', '200 mm'],
] as const;

describe('the passage of a moment', () => {
  const s = siteWith();
  const moment = runningOf(s);
  const passage = passageAt(s, moment)!;
  const { area, perimeter, gap, layers } = s.filter!.media!;

  test('has the speeds of continuity: u over porosity among the media, flow over perimeter times width in the gap', () => {
    // Mean pore velocity, u/ε: Bear, Dynamics of Fluids in Porous Media (1972), ch. 2.
    const u = moment.flows['media']! / area;
    for (const [i, { speed }] of passage.layers.entries()) expect(speed).toBeCloseTo(u / layers[i]!.porosity, 12);
    expect(passage.gapSpeed).toBeCloseTo(moment.flows['gap']! / (perimeter * gap), 12);
    const pores = layers.reduce((sum, { thickness, porosity }) => sum + thickness * porosity, 0) * area;
    expect(passage.throughTime).toBeCloseTo(pores / moment.flows['media']!, 9);
  });

  test('has the head of the running balance, clean', () => {
    expect(passage.head).toBeCloseTo(balance(s).mediaHead!, 12);
    expect(passage.head / passage.lift).toBeCloseTo(balance(s).lift!, 9);
  });

  test('opens its gap by the head past lift as the balance does, so that flow, width and speed agree', () => {
    const lifted = siteWith([...FINE, ['filter.media.submergedWeight', '5 N']]);
    const at = passageAt(lifted, runningOf(lifted))!;
    expect(at.head).toBeGreaterThan(at.lift);
    expect(at.gap).toBeGreaterThan(gap);
    expect(at.shareAt(gap)).toBeCloseTo(at.share!, 6);
  });

  test('would send nothing round without a gap, and as much as the balance with another', () => {
    expect(passage.shareAt(0)).toBeCloseTo(0, 9);
    const wider = siteWith([['filter.media.gap', '12 mm']]);
    const there = passageAt(wider, runningOf(wider))!;
    const here = passageAt(s, { ...moment, flows: { ...moment.flows } })!;
    // The share hardly moves with the flow on clean media, which differs a little between the two.
    expect(here.shareAt(0.012)).toBeCloseTo(there.share!, 2);
    expect(there.shareAt(0.012)).toBeCloseTo(there.share!, 9);
  });

  test('lifts at the onset: with that bottom feed the head is the lift head', () => {
    const fine = siteWith(FINE);
    const at = passageAt(fine, runningOf(fine))!;
    const [a, b] = [1, 2].map((k) => {
      const flows = { media: k * at.through, gap: 0 };
      return passageAt(fine, { t: 0, levels: runningOf(fine).levels, flows })!.head;
    });
    expect(b!).toBeGreaterThan(2 * a!);
    expect(at.onset).toBeGreaterThan(at.through + at.round);
  });
});

describe('what is told', () => {
  test('of clean coarse media: the gap decides, nobody knows it, and the water in it is slower, not faster', () => {
    const words = seen(siteWith());
    expect(words).toMatch(/slips round the sides, because .* the gap decides\./);
    expect(words).toMatch(/Nobody has measured that gap: without one nothing would, at 20 mm \d+ %\./);
    expect(words).toMatch(/Water in the gap is slower than among the media, .* it goes round untreated, not fast\./);
    expect(words).toMatch(/would float up from .* of that\./);
    expect(words).toMatch(/The top feed takes .* past the media, untreated\./);
  });

  test('of a gap that was measured, no doubt', () => {
    expect(seen(siteWith([['filter.media.gap', '8 mm']]))).not.toContain('Nobody has measured');
  });

  test('of a narrow gap: hardly anything', () => {
    expect(seen(siteWith([['filter.media.gap', '1 mm']]))).toMatch(/^Hardly anything slips round the sides/);
    expect(seen(siteWith([['filter.media.gap', 0]]))).toMatch(/^Nothing slips round/);
  });

  test('of media that float: the opened gap', () => {
    const words = seen(siteWith([...FINE, ['filter.media.submergedWeight', '5 N'], ['filter.media.gap', '2 mm']]));
    expect(words).toMatch(/have lifted the media and the gap beside them has opened from 2 mm to/);
    expect(words).toContain('The media float:');
  });

  test('of clogged media: whose pores, and that the gap overtakes', () => {
    const s = siteWith([...FINE, ['filter.media.submergedWeight', '500 N']]);
    const deposits = { 'coarse mat': 0.2 * s.filter!.media!.area * 0.2 };
    const porosities = porositiesLeft(s.filter!, deposits);
    const moment = runningOf(s);
    const words = explanation({ scenario: s, moment, porosities }).join(' ');
    expect(words).toMatch(/because deposit holds the water back: the bed asks .* of head, clean it would ask/);
  });

  test.each([
    ['no filter', [['filter', undefined]], {}, /no filter/],
    ['no media', [['filter.media', undefined]], {}, /has no media/],
    ['a pump that stands', [], { main: 0, 'bottom feed': 0, media: 0, gap: 0 }, /^The pump stands/],
    ['a shut bottom feed', [], { 'bottom feed': 0, media: 0, gap: 0 }, /^No water goes under the rack/],
    [
      'water that runs back',
      [],
      { main: -1e-3, 'bottom feed': -1e-3, media: -9e-4, gap: -1e-4 },
      /^The water runs back/,
    ],
  ] as const)('of %s: a sentence of what follows', (_name, edits, flows, words) => {
    const s = edits[0] ? { ...siteWith(), ...changed(edits[0][0]) } : siteWith();
    const moment = runningOf(siteWith());
    const said = explanation({ scenario: s, moment: { ...moment, flows: { ...moment.flows, ...flows } } });
    expect(said[0]).toMatch(words);
    expect(said.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('in inches and gallons, too', () => {
    expect(seen({ ...siteWith(), display: 'us' })).toMatch(/gph|gpm/);
  });
});

/** A site without its filter, or without its media. */
function changed(place: string): Partial<Scenario> {
  const s = siteWith();
  return { filter: place === 'filter' ? undefined : { ...s.filter!, media: undefined } };
}

describe('the hundred marks', () => {
  const s = siteWith([['filter.media.gap', '12 mm']]);
  const moment = runningOf(s);
  const passage = passageAt(s, moment)!;
  const scene = sceneOf(s);
  const scale = closeUpOf(scene, 1000)!;
  const { courses, factor } = coursesOf(
    scene.filter!,
    passage,
    moment.levels['filter']!,
    bedAtRest(scene.filter!, s.filter!.media!, scale),
    scale,
  );

  test('are a hundred, and as many go round as parts of the bottom feed', () => {
    const count = (way: string): number => courses.find((course) => course.way === way)?.marks.length ?? 0;
    expect(count('through') + count('round')).toBe(100);
    expect(count('round')).toBe(Math.round(100 * passage.share!));
  });

  test('move as fast as the water on the scale of the drawing', () => {
    for (const course of courses) {
      const lasts = course.within + course.beyond;
      const mark = { x: 0, ahead: 0 };
      const [at, later] = [0.3, 0.31].map((part) => placeOf(course, mark, part));
      expect(at!.within && later!.within).toBe(true);
      const speed = (at!.y - later!.y) / scale.a / (0.01 * lasts);
      const wanted = course.way === 'round' ? [passage.gapSpeed] : passage.layers.map((layer) => layer.speed);
      expect(wanted.some((each) => Math.abs(speed / each - 1) < 1e-6)).toBe(true);
    }
  });

  test('never leave their way while within, and come round again', () => {
    for (const course of courses)
      for (let k = 0; k <= 200; k++) {
        const { x, y, within } = placeOf(course, { x: 17, ahead: 0.4 }, k / 200);
        expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
        if (within) expect(x).toBe(17);
      }
  });

  test('are watched at a stated speed: about seven seconds a passage', () => {
    expect(factor).toBe(watchedAt(passage));
    const quick = Math.min(passage.throughTime!, passage.roundTime!) / factor;
    expect(quick).toBeGreaterThan(3);
    expect(quick).toBeLessThan(14);
    expect(factorWords(20)).toBe('twenty times as fast as the water');
    expect(factorWords(0.1)).toBe('in slow motion, a tenth as fast as the water');
    expect(factorWords(1)).toBe('as fast as the water');
  });
});

describe('dye in the drawing', () => {
  test('has tanks of equal pore volume, from the rack to the top of what is wet', () => {
    const media = siteWith().filter!.media!;
    const top = media.bottom + media.layers.reduce((sum, { thickness }) => sum + thickness, 0);
    const bounds = tankBounds(media, top, 8);
    expect(bounds).toHaveLength(9);
    expect(bounds[0]).toBe(media.bottom);
    expect(bounds[8]).toBeCloseTo(top, 9);
    const pores = (low: number, high: number): number => {
      let z = media.bottom;
      return media.layers.reduce((sum, { thickness, porosity }) => {
        const from = z;
        z += thickness;
        return sum + porosity * Math.max(0, Math.min(high, z) - Math.max(low, from));
      }, 0);
    };
    const whole = pores(media.bottom, top);
    for (let i = 0; i < 8; i++) expect(pores(bounds[i]!, bounds[i + 1]!)).toBeCloseTo(whole / 8, 9);
  });

  test('is played within half a minute', () => {
    for (const lasts of [20, 300, 900, 5000, 20_000]) expect(lasts / playedAt(lasts)).toBeLessThanOrEqual(30);
  });
});

describe('deposit in the drawing', () => {
  const s = siteWith();
  const media = s.filter!.media!;
  const scene = sceneOf(s);
  const scale = closeUpOf(scene, 1000)!;
  const drawn = (part: number) => {
    const held = part * media.area * media.layers[1]!.thickness * media.layers[1]!.porosity;
    return depositMarks(
      scene.filter!,
      media,
      porositiesLeft(s.filter!, { 'bagged media': held }),
      bedAtRest(scene.filter!, media, scale),
      scale,
    );
  };
  const heights = (d: string): number[] => [...d.matchAll(/M[\d.]+ ([\d.]+)h/g)].map(([, y]) => Number(y));
  const dotsOf = (part: number): number[] => {
    const [settled] = drawn(part);
    return settled?.dots.kind === 'path' ? heights(settled.dots.d) : [];
  };

  test('is none where the media are clean', () => expect(drawn(0)).toEqual([]));

  test('has twice the dots for twice the deposit, and darkens by it', () => {
    expect(dotsOf(0.04).length / dotsOf(0.02).length).toBeCloseTo(2, 1);
    expect(drawn(0.04)[0]!.filled).toBeCloseTo(0.04, 6);
  });

  test('lies denser where the water comes in', () => {
    const all = dotsOf(0.04);
    const [bottom, top] = [Math.max(...all), Math.min(...all)];
    const low = all.filter((y) => y > 0.5 * (bottom + top)).length;
    expect(low).toBeGreaterThan(0.6 * all.length);
  });
});

const AT = 3 * 3600;

function poured(text: string, at = AT): DyeGiven {
  const given = dyeGiven({ want: 'dye', text, display: undefined, at });
  if (given.kind !== 'dye') throw new Error(JSON.stringify(given));
  return given;
}

describe('a dye that was poured', () => {
  const s = siteWith();
  const media = s.filter!.media!;
  const scene = sceneOf(s);
  const scale = closeUpOf(scene, 1000)!;
  const { test: figures, watch } = poured(siteText('courtyard'));
  if (!watch.poured || !figures.fed) throw new Error('the courtyard is fed at nine');
  const level = runningOf(s).levels['filter']!;
  const at = (t: number) =>
    dyedAt(scene.filter!, media, watch, t, level, bedAtRest(scene.filter!, media, scale), scale);

  test('is all under the rack at first, at its full tint, and nowhere before', () => {
    expect(at(AT - 1)).toEqual([]);
    const [plenum, ...others] = at(AT);
    expect(plenum!.name).toBe('plenum');
    expect(plenum!.part).toBeCloseTo(1, 9);
    expect(others).toEqual([]);
  });

  test('thins under the rack as a mixed tank does, by exp(−Q t/V)', () => {
    // Levenspiel, Chemical Reaction Engineering, ch. 11: the washout of one mixed tank.
    for (const t of [20, 60, 120]) {
      const plenum = at(AT + t).find(({ name }) => name === 'plenum')!;
      expect(plenum.part).toBeCloseTo(Math.exp(-t / figures.times.plenum), 3);
    }
  });

  test('lies in bands that touch from the rack to the top of the media', () => {
    const bands = at(AT + 150).filter(({ name }) => name.startsWith('media'));
    expect(bands).toHaveLength(media.tanks);
    bands.slice(1).forEach((band, i) => {
      expect(band.y + band.height).toBeCloseTo(bands[i]!.y, 6);
    });
  });

  test('is told whole: the parts of a moment make a hundred', () => {
    for (const t of [30, 200, 500]) {
      const parts = [...whereWords(watch, AT + t).matchAll(/([\d.]+) %/g)].map(([, part]) => Number(part));
      expect(Math.abs(parts.reduce((a, b) => a + b, 0) - 100)).toBeLessThan(3);
    }
  });

  test('has a curve that stays in its frame, with three tenths marked', () => {
    const marks = dyePlotMarks(figures, 400, 100);
    const said = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(said).toEqual(expect.arrayContaining(['10 %', '50 %', '90 %', 'through', 'round']));
    const { x, y, most } = dyeScale([figures], 400);
    expect(x(figures.t90)).toBeLessThan(400);
    expect(y(most)).toBeGreaterThan(0);
    for (const mark of marks) expect(JSON.stringify(mark)).not.toContain('NaN');
  });

  test.each([
    ['no filter', with_({ filter: undefined }), AT, /filter/],
    ['the pump standing', JSON.parse(siteText('courtyard')), 6.5 * 3600, /pump|stands/],
    ['a moment after the run', JSON.parse(siteText('courtyard')), 40 * 86400, /outside the run/],
  ])('into %s is told in a sentence', (_name, file, moment, words) => {
    const given = poured(JSON.stringify(file), moment);
    const says = given.watch.says || (given.test.fed ? '' : given.test.says);
    expect(says).toMatch(words);
  });
});

function with_(changes: object): unknown {
  const file = JSON.parse(siteText('courtyard'));
  const { topFeed: _, ...plumbing } = file.plumbing;
  return JSON.parse(
    JSON.stringify({
      ...file,
      plumbing: { ...plumbing, bottomFeed: undefined, topFeed: { ...file.plumbing.topFeed, to: 'upper pool' } },
      ...changes,
    }),
  );
}

describe('two cases side by side', () => {
  const kept = siteWith();
  const now = siteWith([['filter.media.gap', '15 mm']]);
  const sideOf = (s: Scenario) => ({ scenario: s, moment: runningOf(s) });

  test('are told by what slips round in both, and by what is set otherwise', () => {
    const { lead, set, rows } = differencesOf(sideOf(kept), sideOf(now));
    expect(lead).toMatch(/^As kept, 1\.0 % slips round the media; now \d+ % does\.$/);
    expect(set).toBe('Set otherwise: gap round the mats 15 mm, as kept 5 mm.');
    expect(rows.find(({ name }) => name === 'time in the gap')).toMatchObject({ kept: expect.stringMatching(/ s$/) });
  });

  test('that are the same are told so', () => {
    const { lead, set } = differencesOf(sideOf(kept), sideOf(kept));
    expect(lead).toBe('1.0 % slips round the media, in both cases.');
    expect(set).toBe('Nothing of the site is set otherwise.');
  });

  test('of which one is not fed are told so', () => {
    const still = { scenario: now, moment: { t: 0, levels: runningOf(now).levels, flows: {} } };
    expect(differencesOf(sideOf(kept), still).lead).toBe('As kept, 1.0 % slips round the media; now no water goes up.');
    expect(differencesOf(still, still).lead).toBe('In neither case does water go up through the media.');
  });

  test('are drawn at one scale that fits the sheet', () => {
    const scene = sceneOf(now);
    const a = vesselScale(scene, 580, 400)!;
    const scale = vesselOf(scene, 580, a)!;
    expect(scale.a).toBe(a);
    expect(scale.height).toBeLessThanOrEqual(400.5);
    expect(scale.x(scene.filter!.brink.x)).toBeLessThan(580);
  });
});
