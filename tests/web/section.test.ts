import { describe, expect, test } from 'vitest';
import { criticalDepth, reachOfSheet } from '../../sim/laws/sheet.ts';
import { standingMarks } from '../../web/section/basin-water.ts';
import { bedAtRest } from '../../web/section/bed.ts';
import { pondStanding } from '../../web/section/bodies.ts';
import { closeUpOf } from '../../web/section/close-up.ts';
import { closeUpWords } from '../../web/section/close-up-words.ts';
import { leftAt, makeCut, rightAt, widthAt } from '../../web/section/cut.ts';
import { flowingAt, layersOf } from '../../web/section/drawing.ts';
import { MOST_DOTS } from '../../web/section/earth.ts';
import { brinkDepth, trajectory } from '../../web/section/falling.ts';
import { boreWidth, ribbonsOf } from '../../web/section/pipes.ts';
import { fallsAt, sheetOver, stoneSheet } from '../../web/section/running.ts';
import { exaggeration, scaleOf } from '../../web/section/scale.ts';
import { settingsAt } from '../../web/section/settings.ts';
import { sheetOf } from '../../web/section/sheet.ts';
import { stoneMarks } from '../../web/section/stone.ts';
import { wayMarks } from '../../web/section/streamlines.ts';
import { svgText } from '../../web/section/svg-text.ts';
import { handleAngle } from '../../web/section/valve.ts';
import { passageMarks } from '../../web/section/vessel.ts';
import { momentAt } from '../../web/state/moment.ts';
import { drawn, marksOf, pointsOf, scenarioOf } from './sectionPaths.ts';
import { siteText } from './sites.ts';

const courtyard = drawn(scenarioOf(siteText('courtyard')), 984);
const running = momentAt(courtyard.series, 5 * 3600);
const stopped = momentAt(courtyard.series, 6.9 * 3600);

const pathsOf = (marks: readonly { kind: string }[], look: string): string[] =>
  (marks as { kind: string; look: string; d: string }[])
    .filter((mark) => mark.kind === 'path' && mark.look.split(' ').includes(look))
    .map(({ d }) => d);

describe('the cut of a basin', () => {
  test('is as wide as the side of the square of its plan area', () => {
    const cut = makeCut(
      [
        [-1, 4],
        [0, 9],
      ],
      10,
      0.6,
    );
    expect(widthAt(cut, -1)).toBe(2);
    expect(widthAt(cut, 0)).toBe(3);
    expect(leftAt(cut, 0)).toBe(10);
    expect(rightAt(cut, 0)).toBe(13);
    // Halfway up the area is 6.5 m²; the root is drawn in six straight pieces.
    expect(widthAt(cut, -0.5)).toBeCloseTo(Math.sqrt(6.5), 3);
    expect(leftAt(cut, -1)).toBeCloseTo(10.6, 12);
  });

  test('shows a ledge as a step at one elevation', () => {
    const cut = makeCut(
      [
        [-1, 4],
        [-0.5, 4],
        [-0.5, 9],
        [0, 9],
      ],
      0,
      1,
    );
    expect(leftAt(cut, -0.5001)).toBeCloseTo(1, 9);
    expect(leftAt(cut, -0.5)).toBe(0);
  });
});

describe('the scale', () => {
  test('puts the pond’s surface at the level by the scale, and bands of equal depth under it', () => {
    const { scene, scale } = courtyard;
    const level = running.levels.pond;
    const marks = standingMarks(pondStanding(scene, level), scale);
    const [surface] = pathsOf(marks, 'surface').map(pointsOf);
    expect(surface[0][1]).toBeCloseTo(scale.y(level), 0);
    expect(scale.y(0) - scale.y(1)).toBeCloseTo(scale.k * scale.a, 9);
    const second = pointsOf(pathsOf(marks, 'w2')[0]);
    expect((second[0][1] - surface[0][1]) / (scale.k * scale.a)).toBeCloseTo(0.15, 2);
  });

  test('tells depths in black and white by level lines, the closer the deeper', () => {
    const { scene } = courtyard;
    const scale = scaleOf(scene, 984, true);
    const marks = standingMarks(pondStanding(scene, running.levels.pond), scale);
    const lines = [
      ...new Set(
        pathsOf(marks, 'depth')
          .flatMap(pointsOf)
          .map(([, y]) => y),
      ),
    ];
    const gaps = lines.slice(1).map((y, i) => y - lines[i]);
    expect(gaps.length).toBeGreaterThan(8);
    for (const [i, gap] of gaps.slice(1).entries()) expect(gap).toBeLessThanOrEqual(gaps[i] + 0.11);
    expect(gaps[0]).toBeGreaterThan(1.8 * gaps[gaps.length - 1]);
    expect(pathsOf(marks, 'lining')).toEqual([]);
  });

  test.each(['courtyard', 'gravel-basin', 'dammed-stream', 'first-start'])('says how tall %s is drawn', (name) => {
    const { scale } = drawn(scenarioOf(siteText(name)), 984);
    expect(exaggeration(scale.k)).not.toBe('');
    expect(scale.height).toBeLessThan(460);
  });

  test('makes a strip of at least 78 px a meter on a phone', () => {
    const { scale } = drawn(courtyard.scenario, 390);
    expect(scale.strip).toBe(true);
    expect(scale.a).toBeCloseTo(78, 6);
    expect(scale.width).toBeGreaterThan(390);
  });
});

describe('water over a stone', () => {
  test('is nothing while the stone is dry', () => {
    expect(sheetOver(0.6, 0.62, 0)).toEqual({ head: 0, brink: 0 });
    const pool = courtyard.scene.reaches[0];
    if (pool.kind !== 'pool') throw new Error('the first reach is a pool');
    expect(stoneSheet(pool.stones[0], 0.6, 0, 1, courtyard.scale)).toEqual([]);
  });

  // Rouse (1936), Civil Engineering 6(4): the depth at a free brink is 0.715 of the critical depth.
  test('thins to 0.715 of the critical depth at the brink', () => {
    expect(brinkDepth(0.005, 1) / criticalDepth(0.005)).toBeCloseTo(0.715, 12);
  });

  test('is never deeper at the brink than where it comes', () => {
    expect(brinkDepth(0.05, 0.01)).toBe(0.01);
  });

  test('is thrown as far as the law of sheets says, and lands on the lower water', () => {
    const fall = { x: 2, crest: 0.6, to: 0.2, flow: 0.003, width: 0.6, depth: 0, limit: 9 };
    const path = trajectory(fall);
    const [x, z] = path[path.length - 1];
    expect(x - 2).toBeCloseTo(reachOfSheet(0.005, 0.4), 12);
    expect(z).toBeCloseTo(0.2, 12);
  });

  test('falls from no stone once the pump has long stood', () => {
    const settings = settingsAt(courtyard.scenario, courtyard.answer.events, stopped.t);
    const falls = (moment: typeof stopped) => fallsAt(courtyard.scene, { ...moment, settings, flowScale: 1 });
    expect(falls(running).length).toBeGreaterThan(3);
    expect(falls(stopped).filter(({ fall }) => fall.flow > 1e-5)).toEqual([]);
  });
});

describe('the pipes', () => {
  const { scene, scale } = courtyard;

  test('have ribbons that add up at the tee', () => {
    const flows = { main: 0.004, bottom: 0.003, top: 0.001 };
    const [main, bottom, top] = ribbonsOf(scene.pipes, flows, 620, scale);
    expect(bottom.width + top.width).toBeCloseTo(main.width, 9);
    // On the riser the top feed's ribbon keeps to the left edge of the main's.
    const left = (r: typeof main, i: number): number => r.points[i][0] - r.width / 2;
    expect(left(top, 0)).toBeCloseTo(left(main, main.points.length - 1), 9);
  });

  test('have no ribbon where nothing flows, and one that runs back where it does', () => {
    expect(ribbonsOf(scene.pipes, { main: 0, bottom: 0, top: 0 }, 620, scale)).toEqual([]);
    expect(ribbonsOf(scene.pipes, { main: -0.001, bottom: -0.001, top: 0 }, 620, scale).map((r) => r.back)).toEqual([
      true,
      true,
    ]);
  });

  test('have handles along the pipe when open and across it when shut', () => {
    expect(handleAngle(1)).toBe(0);
    expect(handleAngle(0)).toBeCloseTo(Math.PI / 2, 12);
    expect(handleAngle(0.5)).toBeCloseTo(Math.PI / 4, 12);
  });
});

describe('the settings at a moment', () => {
  test('follow the log', () => {
    const { scenario } = courtyard;
    const events = [
      { t: 10, what: 'pump off' },
      { t: 20, what: 'bottom valve 0.4' },
      { t: 30, what: 'check valve failed' },
      { t: 40, what: 'broad stone blockage 0.7' },
      { t: 50, what: 'hose on' },
    ];
    const before = settingsAt(scenario, events, 5);
    expect([before.pumpOn, before.bottomValve, before.checkValve]).toEqual([true, 0.8, 'sound']);
    const after = settingsAt(scenario, events, 60);
    expect(after.pumpOn).toBe(false);
    expect(after.bottomValve).toBe(0.4);
    expect(after.checkValve).toBe('failed');
    expect(after.blockage['broad stone']).toBe(0.7);
    expect(after.hoses).toEqual([true]);
  });
});

describe('the drawing', () => {
  test('has the same stones for the same names', () => {
    const box = { left: 10, right: 50, top: 5, bottom: 25 };
    expect(stoneMarks('broad stone', box)).toEqual(stoneMarks('broad stone', box));
    expect(stoneMarks('broad stone', box)).not.toEqual(stoneMarks('corner stone', box));
    expect(marksOf(drawn(courtyard.scenario, 984), courtyard.at(running))).toEqual(
      marksOf(courtyard, courtyard.at(running)),
    );
  });

  test('levels the top of a stone to its crest', () => {
    const [outline] = stoneMarks('broad stone', { left: 10, right: 50, top: 5, bottom: 25 });
    if (outline.kind !== 'path') throw new Error('a stone is a path');
    const top = Math.min(...pointsOf(outline.d).map(([, y]) => y));
    expect(top).toBe(5);
  });

  test('keeps to its budget of dots', () => {
    const [dots] = pathsOf(courtyard.ground.behind, 'stipple');
    const count = dots.split('M').length - 1;
    expect(count).toBeGreaterThan(800);
    expect(count).toBeLessThanOrEqual(MOST_DOTS);
  });

  test('keeps its ground when a valve is turned, and lays it anew when a stone is raised', () => {
    const { scenario } = courtyard;
    const first = sheetOf(scenario, 984, undefined);
    const feed = scenario.plumbing.bottomFeed!;
    const turned = { ...scenario, plumbing: { ...scenario.plumbing, bottomFeed: { ...feed, valve: 0.3 } } };
    expect(sheetOf(turned, 984, first).ground).toBe(first.ground);
    const raised = scenarioOf(siteText('courtyard').replaceAll('"0.620 m"', '"0.610 m"'));
    expect(sheetOf(raised, 984, first).ground).not.toBe(first.ground);
  });

  test('is written out as SVG text with no mark-up of a title let through', () => {
    const flowing = courtyard.at(running);
    const text = svgText(
      courtyard.scale,
      { title: '<b>&', description: 'A pond' },
      courtyard.ground.clips,
      marksOf(courtyard, flowing),
    );
    expect(text).toContain('<title id="title">&lt;b&gt;&amp;</title><desc id="desc">A pond</desc>');
    expect(text).not.toMatch(/var\(|calc\(|NaN/);
    expect(text).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(text).not.toContain('style="');
  });

  test('computes a moment in under 3 ms', () => {
    const { series, at } = courtyard;
    for (let i = 0; i < 200; i++) at(momentAt(series, 21000 + 10 * i));
    const times = Array.from({ length: 100 }, (_, i) => {
      const start = performance.now();
      at(momentAt(series, 21000 + 20 * i));
      return performance.now() - start;
    }).sort((a, b) => a - b);
    expect(times[50]).toBeLessThan(3);
  });
});

describe('the close-up of the filter', () => {
  const { scenario, scene } = courtyard;
  const close = closeUpOf(scene, 984)!;

  test('has one scale for lengths and heights, and pipes as wide as they are', () => {
    expect(close.k).toBe(1);
    expect((close.y(0) - close.y(1)) / (close.x(1) - close.x(0))).toBeCloseTo(1, 9);
    const { diameter } = scenario.plumbing.main;
    expect(boreWidth(diameter, close) / close.a).toBeCloseTo(diameter, 9);
  });

  test('counts a hundred darts by share', () => {
    const media = scene.filter!.filter.media!;
    const marks = passageMarks(scene.filter!, media, 0.74, 0.26, bedAtRest(scene.filter!, media, close), close);
    const count = (look: string): number => pathsOf(marks, look).join('').split('Z').length - 1;
    expect(count('dart')).toBe(74);
    expect(count('dart-pale')).toBe(26);
  });

  test('draws ways of the water whose widths add up by share, from the feed to the lip', () => {
    const { filter, pipes } = scene;
    const media = filter!.filter.media!;
    const flows = { through: 0.74e-3, round: 0.26e-3, lip: 1e-3 };
    const ways = (by: typeof flows) =>
      wayMarks(filter!, media, pipes.bottomFeed, by, filter!.brink.z + 0.03, bedAtRest(filter!, media, close), close);
    const under = ways(flows).filter(({ look }) => look === 'way deep');
    const widths = under.flatMap((mark) =>
      mark.kind === 'path' ? Array.from({ length: mark.d.split('M').length - 1 }, () => mark.stroke!) : [],
    );
    const gaps = widths.filter((width) => width !== 0.8);
    const sum = (all: number[]): number => all.reduce((a, b) => a + b, 0);
    expect(gaps.length).toBe(2);
    expect(sum(gaps) / sum(widths)).toBeCloseTo(0.26, 1);
    const ends = pathsOf(ways(flows), 'pale').flatMap(pointsOf);
    expect(Math.max(...ends.map(([x]) => x))).toBeCloseTo(close.x(filter!.cut.left + filter!.cut.width), 0);
    expect(ways({ through: 0, round: 0, lip: 0 })).toEqual([]);
    expect(ways({ ...flows, lip: 0 }).some(({ look }) => look === 'way pale')).toBe(false);
  });

  test('is not there without a filter', () => {
    expect(closeUpOf(drawn(scenarioOf(siteText('first-start')), 984).scene, 984)).toBeUndefined();
  });

  test.each([390, 800, 984])('is drawn of numbers alone at %i px', (width) => {
    for (const name of ['courtyard', 'storm']) {
      const site = scenarioOf(siteText(name));
      const sheet = sheetOf(site, width, undefined, 'filter');
      expect(sheet.scale.closeUp).toBe(true);
      const by = drawn(site, width);
      const moment = momentAt(by.series, 0.2 * site.span);
      const flowing = flowingAt(sheet.scene, sheet.scale, moment, by.answer, 3000);
      const settings = settingsAt(site, by.answer.events, moment.t);
      const marks = [
        ...layersOf(sheet.ground, flowing).flat(),
        ...closeUpWords(sheet.scene, sheet.scale, moment, settings),
      ];
      expect(JSON.stringify(marks)).not.toMatch(/NaN|null|Infinity|undefined/);
    }
  });
});
