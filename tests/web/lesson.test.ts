import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import { withValueAt, withValuesAt } from '../../sim/studies/place.ts';
import { bySquare, gapNow } from '../../web/lesson/losses.ts';
import { recall, remember } from '../../web/lesson/memory.ts';
import { editsOf, fileAt, TEACHING_SITE } from '../../web/lesson/settings.ts';
import { isLessonAlone, standingOf, stepLabel } from '../../web/lesson/standing.ts';
import { figuresNow, STEPS } from '../../web/lesson/steps.ts';
import { type Taught, taughtOf } from '../../web/lesson/taught.ts';
import { type Document, edited, openDocument, redone, undone } from '../../web/state/document.ts';

const text = readFileSync(new URL(`../../scenarios/${TEACHING_SITE}.json`, import.meta.url), 'utf8');
const file: unknown = JSON.parse(text);

function stand(at: unknown, display: 'metric' | 'us' = 'metric'): Taught {
  const reading = readScenario(JSON.stringify(at));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const scenario = { ...reading.scenario, display };
  return taughtOf(scenario, balance(scenario))!;
}

const stands = STEPS.map(({ sets }) => stand(fileAt(file, sets, file)));
const share = (i: number): number => stands[i]!.balance.channeled!;
const lift = (i: number): number => stands[i]!.balance.lift!;
const told = (i: number, at = stands[i]!): string => STEPS[i]!.says(at).join(' ');
const [FIRST, MORE, GAP, MUCK, PUSHED, GENTLY, CLEANED] = [0, 1, 2, 3, 4, 5, 6];

describe('the lesson on channeling', () => {
  test('begins as the site stands, and every step sets the same places', () => {
    expect(stand(file).balance).toEqual(stands[FIRST]!.balance);
    const places = STEPS.map(({ sets }) => editsOf(sets).map(([place]) => place));
    for (const each of places) expect(each).toEqual(places[0]);
  });

  test('what its steps claim is what the site answers', () => {
    expect(stands[MORE]!.balance.flows['bottom feed']).toBeGreaterThan(
      1.5 * stands[FIRST]!.balance.flows['bottom feed']!,
    );
    expect(Math.abs(share(MORE) - share(FIRST))).toBeLessThan(0.01);
    // In both ways the loss grows almost in step with the flow: by no more than its square fifth beyond it.
    for (const part of Object.values(bySquare(stands[MORE]!))) expect(part).toBeLessThan(0.2);
    expect(stands[MORE]!.balance.contact!.pore).toBeLessThan(0.7 * stands[FIRST]!.balance.contact!.pore);
    expect(share(GAP)).toBeGreaterThan(5 * share(FIRST));
    expect(share(MUCK)).toBeGreaterThan(4 * share(FIRST));
    expect(stands[MUCK]!.balance.contact!.pore).toBeGreaterThan(stands[FIRST]!.balance.contact!.pore);
    expect([FIRST, MORE, GAP, MUCK, GENTLY].map(lift).every((each) => each < 1)).toBe(true);
    expect(lift(PUSHED)).toBeGreaterThan(1);
    expect(share(PUSHED)).toBeGreaterThan(share(MUCK) + 0.1);
    expect(share(GENTLY)).toBeGreaterThan(4 * share(FIRST));
    expect(stands[CLEANED]!.balance).toEqual(stands[FIRST]!.balance);
  });

  test('the head hardly passes the one that lifts, for the gap opens', () => {
    expect(lift(PUSHED)).toBeLessThan(1.2);
    expect(gapNow(stands[PUSHED]!)).toBeGreaterThan(1.5 * stands[PUSHED]!.media.gap);
    expect(told(PUSHED)).toMatch(/The head rises little past that point/);
    expect(told(PUSHED)).not.toContain('stays');
    expect(told(PUSHED)).toContain('Lying still, the media would cost more head than the');
  });

  test('media that lie still under all the water are not said to cost more than what lifts them', () => {
    const clean = stand(fileAt(file, { ...STEPS[PUSHED]!.sets, muck: '0 L' }, file));
    expect(clean.balance.lift).toBeLessThan(1);
    expect(told(PUSHED, clean)).not.toContain('Lying still');
    expect(told(PUSHED, clean)).toMatch(/The media cost .* and would float up at .*: they still lie/);
  });

  test('that gentler water rather takes the gap is told where the figures show it, and only there', () => {
    expect(share(GENTLY)).toBeGreaterThan(share(MUCK));
    expect(told(GENTLY)).toContain('slow water finds the gap relatively easier');
    // The clean bagged media lose more by the square of the speed than the narrow gap: there it is the other way.
    const gentle = { ...STEPS[GENTLY]!.sets, muck: '0 L' };
    const clean = stand(fileAt(file, gentle, file));
    expect(clean.balance.channeled!).toBeLessThan(share(FIRST));
    expect(told(GENTLY, clean)).not.toContain('slow water');
  });

  test('the part that goes by the square of the speed is that of the laws', () => {
    // Between plates (White, Fluid Mechanics) with entrance and exit: 12 ν L u/(g δ²) + (1.5 + 0.04 L/2δ) u²/2g.
    const at = stands[MUCK]!;
    const [gap, length] = [at.media.gap, 0.34];
    const u = at.balance.flows['gap']! / (at.media.perimeter * gap);
    const square = ((1.5 + (0.02 * length) / gap) * u * u) / (2 * 9.80665);
    expect(bySquare(at).gap).toBeCloseTo(square / at.balance.mediaHead!, 6);
    // Ergun (1952), its inertial term over both layers: 1.75 (1 − ε) L u²/(g ε³ d).
    const v = at.balance.flows['media']! / at.media.area;
    const ergun = (porosity: number, grain: number, thick: number): number =>
      (1.75 * (1 - porosity) * thick * v * v) / (9.80665 * porosity ** 3 * grain);
    const [mat] = at.media.layers;
    const left = mat.porosity - (mat.beta * mat.deposit) / (at.media.area * mat.thickness);
    const media = ergun(left, 0.25e-3, 0.06) + ergun(0.85, 8e-3, 0.28);
    expect(bySquare(at).media).toBeCloseTo(media / at.balance.mediaHead!, 4);
  });

  test('the flow between two walls grows by about the cube of their distance', () => {
    // Plane Poiseuille flow (White, Fluid Mechanics): at one head Q ~ δ³; over the gap's ends and at 15 mm it is less.
    const quiet = (gap: string): number => {
      const { balance: b } = stand(withValuesAt(file, [['filter.media.gap', gap]]));
      return b.flows.gap! / b.mediaHead!;
    };
    expect(quiet('1 mm') / quiet('0.5 mm')).toBeCloseTo(8, 0);
  });

  test('says each step in whole sentences with the figures of the site, in either units', () => {
    for (const i of STEPS.keys()) {
      const says = STEPS[i]!.says(stands[i]!);
      expect(says.length).toBeGreaterThanOrEqual(3);
      for (const each of says) expect(each).toMatch(/^[A-Z‘].*[.?]$/);
      expect(says.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    }
    expect(told(FIRST)).toContain('here 2.5 mm wide');
    const us = told(FIRST, stand(file, 'us'));
    expect(us).toContain('0.10 in');
    expect(us).toMatch(/gp[mh]/);
    const pushed = told(PUSHED, stand(fileAt(file, STEPS[PUSHED]!.sets, file), 'us'));
    expect(new Set(pushed.match(/0\.\d\d in/g)).size).toBeGreaterThanOrEqual(3);
    expect(pushed).not.toMatch(/\d\/\d/);
    expect(figuresNow(stands[GAP]!)).toMatch(/^As it stands, 74 % of what comes up slip round/);
  });

  test('a site whose filter does not run teaches nothing', () => {
    const still = withValuesAt(file, [['plumbing.bottomFeed.valve', 0]]);
    const reading = readScenario(JSON.stringify(still));
    if (!reading.ok) throw new Error('refused');
    expect(taughtOf(reading.scenario, balance(reading.scenario))).toBeUndefined();
    expect(taughtOf({ ...reading.scenario, filter: undefined }, null)).toBeUndefined();
  });
});

describe('where the site stands', () => {
  const opened = openDocument(TEACHING_SITE, text)!;
  const take = (doc: Document, i: number): Document =>
    edited(doc, fileAt(file, STEPS[i]!.sets, doc.now.file), stepLabel(STEPS[i]!.title));
  const walked = (to: number): Document => {
    let doc = opened;
    for (let i = 1; i <= to; i++) doc = take(doc, i);
    return doc;
  };
  const standing = (doc: Document, shown: number) => standingOf(doc, file, STEPS, shown);

  test('each step is known again, and undo and redo lead from one to the other', () => {
    let doc = walked(CLEANED);
    for (let i = CLEANED; i > 0; i--) {
      expect(standing(doc, i)).toEqual({ step: i, isOn: true });
      doc = undone(doc);
      expect(standing(doc, i)).toEqual({ step: i - 1, isOn: true });
    }
    for (let i = 1; i <= CLEANED; i++) {
      doc = redone(doc);
      expect(standing(doc, i - 1)).toEqual({ step: i, isOn: true });
    }
  });

  test('of the first and the last, which set the same, it is the one that was set; however many are undone at once', () => {
    expect(standing(walked(CLEANED), FIRST).step).toBe(CLEANED);
    expect(standing(take(walked(MORE), FIRST), MORE).step).toBe(FIRST);
    expect(standing(opened, PUSHED).step).toBe(FIRST);
    const byHand = (from: number): Document => edited(walked(from), fileAt(file, STEPS[FIRST]!.sets, file), 'by hand');
    expect(standing(byHand(PUSHED), PUSHED).step).toBe(CLEANED);
    expect(standing(byHand(MUCK), MUCK).step).toBe(FIRST);
  });

  test('a dial of one’s own leaves the step; the same figure in other words does not', () => {
    const set = (place: string, value: unknown) =>
      standing(edited(walked(MUCK), withValueAt(walked(MUCK).now.file, place, value), 'a dial'), MUCK);
    expect(set('filter.media.gap', '7 mm')).toEqual({ step: MUCK, isOn: false });
    expect(set('filter.media.gap', '15 mm').isOn).toBe(false);
    expect(set('plumbing.bottomFeed.valve', 0.55).isOn).toBe(false);
    expect(set('filter.media.submergedWeight', '50 N').isOn).toBe(false);
    expect(set('water.temperature', 5).isOn).toBe(false);
    expect(set('filter.media.gap', '0.25 cm').isOn).toBe(true);
    expect(set('filter.media.layers[0].deposit', 0.004).isOn).toBe(true);
    expect(set('plumbing.topFeed.valve', '50 %').isOn).toBe(true);
    expect(set('title', 'Our class').isOn).toBe(true);
  });

  test('what the lesson alone made of its site is told from what somebody did to it, undone or not', () => {
    expect(isLessonAlone(walked(CLEANED))).toBe(true);
    expect(isLessonAlone(undone(walked(MUCK)))).toBe(true);
    const own = edited(walked(MUCK), withValueAt(walked(MUCK).now.file, 'title', 'Our class'), 'the site’s name');
    expect(isLessonAlone(own)).toBe(false);
    expect(isLessonAlone(undone(own))).toBe(false);
    expect(isLessonAlone(take(own, PUSHED))).toBe(false);
  });

  test('a step puts the whole site back, but for its name and units', () => {
    const changed = withValuesAt(file, [
      ['pump.suction', '-0.85 m'],
      ['title', 'Our class'],
      ['display', 'us'],
    ]);
    const put = fileAt(file, STEPS[GAP]!.sets, changed);
    expect(put).toMatchObject({ title: 'Our class', display: 'us', pump: { suction: '-0.90 m' } });
    expect(standing(edited(opened, put, 'x'), MORE)).toEqual({ step: GAP, isOn: true });
  });
});

describe('what the tab keeps of the lesson', () => {
  const lesson = { address: '#own=a', step: 3, before: '#courtyard' };

  test('comes back as it was kept, and goes when the lesson is left', () => {
    const kept = new Map<string, string>();
    const store = {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
      removeItem: (key: string) => void kept.delete(key),
    };
    expect(recall(() => store)).toBeUndefined();
    remember(() => store, lesson);
    expect(recall(() => store)).toEqual(lesson);
    remember(() => store, undefined);
    expect(recall(() => store)).toBeUndefined();
    for (const damaged of ['{', 'null', '{"step":1}']) {
      for (const key of ['tumblebay lesson']) kept.set(key, damaged);
      expect(recall(() => store)).toBeUndefined();
    }
  });

  test('a browser that keeps nothing costs nothing but that', () => {
    const barred = (): Storage => {
      throw new Error('barred');
    };
    expect(recall(barred)).toBeUndefined();
    expect(() => remember(barred, lesson)).not.toThrow();
  });
});
