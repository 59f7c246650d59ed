import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerTo } from '../../web/engine/answers.ts';
import type { Answered } from '../../web/engine/protocol.ts';
import { curvePoints, extentWithin, pathThrough } from '../../web/plots/curve.ts';
import { flagWords, headMarks, playheadAt, poleMarks } from '../../web/plots/flag-marks.ts';
import { anchorOf, FLAG, flagsOf, minutesRound, seatFlags } from '../../web/plots/flags.ts';
import { type Box, boxOfText, overlaps, seatLabels } from '../../web/plots/labels.ts';
import { lookOf } from '../../web/plots/looks.ts';
import { type Sheet, sheetOf } from '../../web/plots/sheet.ts';
import { columnsOf, type Other, taskOf, USUAL, wantedRoom } from '../../web/plots/task.ts';
import { textWidth } from '../../web/plots/text-width.ts';
import { openAxis, type Window } from '../../web/plots/time-axis.ts';
import type { Pixel, TextMark } from '../../web/section/marks.ts';
import { basinName, flowName } from '../../web/views/names.ts';
import { siteNames, siteText } from './sites.ts';

const answered = new Map<string, Answered>();
function siteAnswer(name: string): Answered {
  const known = answered.get(name);
  if (known) return known;
  const outcome = answerTo({ text: siteText(name), display: undefined, depth: 'quick', about: 'stop' });
  if (outcome.kind !== 'answered') throw new Error(`${name}: ${outcome.kind}`);
  answered.set(name, outcome);
  return outcome;
}

function drawn({ scenario, answer, series }: Answered, window: Window, width: number, choice = USUAL, other?: Other) {
  const columns = columnsOf(series, scenario, other, { basin: basinName, flow: flowName });
  const wanted = wantedRoom(answer, scenario) ?? 0.025;
  const task = taskOf({ scenario, answer, series, other, columns, choice, window, width, wanted });
  const sheet = sheetOf(task);
  const flags = seatFlags(flagsOf(answer, scenario.starts, window, task.back?.back), sheet.axis, sheet.place);
  return { task, sheet, flags };
}

const windowsOf = ({ answer }: Answered): Window[] => [
  [0, answer.span],
  [0.3 * answer.span, 0.32 * answer.span],
  ...answer.events.slice(0, 4).map(({ t }) => minutesRound(t, answer.span)),
];

const textsOf = (marks: Sheet['marks']): TextMark[] => marks.filter((mark) => mark.kind === 'text');

function boxOf({ x, y, text, look, at }: TextMark): Box {
  const { size = 12, italic = false } = lookOf(look.split(' ')[0]!);
  const width = textWidth(text, size, italic);
  return boxOfText(x - { start: 0, middle: width / 2, end: width }[at], y, width, size);
}

describe('the sheet of both plots', () => {
  test.each(siteNames)('of %s has no two words over each other, at any width and window', (name) => {
    const site = siteAnswer(name);
    for (const width of [328, 358, 720, 788, 984, 1300]) {
      for (const window of windowsOf(site)) {
        for (const by of ['depth', 'elevation'] as const) {
          const { sheet, flags } = drawn(site, window, width, { ...USUAL, by });
          const texts = textsOf([...sheet.marks, ...flagWords(flags, sheet.place)]);
          expect(texts.length).toBeGreaterThan(8);
          texts.forEach((a, i) => {
            for (const b of texts.slice(i + 1))
              expect(overlaps(boxOf(a), boxOf(b)), `${width} ${window}: ‘${a.text}’ on ‘${b.text}’`).toBe(false);
            expect(boxOf(a).left, a.text).toBeGreaterThanOrEqual(-0.5);
            expect(boxOf(a).right, a.text).toBeLessThanOrEqual(width + 0.5);
          });
        }
      }
    }
  });

  test('fills what runs back under its flow and says how much', () => {
    const site = siteAnswer('courtyard');
    const { sheet, task } = drawn(site, minutesRound(21_600, site.answer.span), 984);
    expect(sheet.marks.filter(({ look }) => look === 'wash').length).toBe(1);
    expect(task.back!.back.volume).toBeGreaterThan(0.1);
    expect(textsOf(sheet.marks).some(({ text }) => /^\d+ L run back$/.test(text))).toBe(true);
  });

  test('draws the first line of each plot as the subject, its limits dashed, another case dashed', () => {
    const site = siteAnswer('courtyard');
    const { series, scenario } = siteAnswer('low-edge');
    const other: Other = { name: 'a year later', series, scenario };
    const { sheet } = drawn(site, minutesRound(21_600, site.answer.span), 984, USUAL, other);
    const looks = sheet.marks.map(({ look }) => look);
    expect(looks.filter((look) => look === 'subject').length).toBe(2);
    for (const look of ['edge', 'wanted', 'mark']) {
      expect(looks).toContain(look);
      expect(lookOf(look).dash?.length).toBeGreaterThan(1);
    }
    expect(looks.filter((look) => look === 'other').length).toBe(2);
    expect(looks).not.toContain('failing');
    const failing = drawn(site, [0, 900], 984, USUAL, { ...other, fails: true }).sheet.marks;
    expect(failing.map(({ look }) => look)).toContain('failing');
  });

  test('moves its playhead without making a path anew, rings on the subjects’ own values', () => {
    const site = siteAnswer('courtyard');
    const { sheet, task } = drawn(site, minutesRound(21_600, site.answer.span), 984);
    const [level, flow] = [task.levels.lines[0]!, task.flows.lines[0]!];
    const head = playheadAt(sheet, level, flow, 21_600);
    expect(head.x).toBe(sheet.place.left + sheet.axis.x(21_600));
    expect(head.rings.length).toBe(2);
    const row = level.times.indexOf(21_600);
    expect(head.rings[0]).toBeCloseTo(sheet.levels.y(level.values[row]!, level), 9);
    expect(headMarks(sheet).length).toBe(2);
    expect(poleMarks([], sheet)).toEqual([]);
  });
});

describe('a curve on the opened axis', () => {
  const count = 100_000;
  const times = Float64Array.from({ length: count }, (_, i) => i);
  const axis = openAxis(count - 1, [50_000, 50_780], 900);

  test('keeps a peak of one row among a hundred thousand, beside the window and inside it', () => {
    const values = new Float64Array(count);
    values[20_001] = 1;
    values[50_123] = -1;
    const points = curvePoints(times, values, axis, 0, (value) => value);
    expect(points.some(([x, y]) => y === 1 && Math.abs(x - axis.x(20_001)) < 1e-6)).toBe(true);
    expect(points.some(([x, y]) => y === -1 && Math.abs(x - axis.x(50_123)) < 1e-6)).toBe(true);
    expect(points.length).toBeLessThan(4 * 903 + 6);
  });

  test('has its lowest and highest px within a stretch, its ends set in', () => {
    const bent: Pixel[] = [
      [0, 0],
      [10, 20],
      [20, 0],
    ];
    expect(extentWithin(bent, 2, 4)).toEqual([4, 8]);
    expect(extentWithin(bent, 5, 15)).toEqual([10, 20]);
    expect(extentWithin(bent, 30, 40)).toBeUndefined();
  });

  test('is told as a path through its points', () => {
    expect(
      pathThrough([
        [0, 0],
        [10, 0],
        [10, 5],
        [20, 6],
      ]),
    ).toBe('M0 0H10V5L20 6');
  });
});

describe('names beside lines', () => {
  test('meet no line and no other name, whatever the lines', () => {
    const room: Box = { left: 0, top: 0, right: 400, bottom: 150 };
    const heights = fc.array(fc.array(fc.integer({ min: 0, max: 150 }), { minLength: 5, maxLength: 5 }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(heights, (drawn) => {
        const lines = drawn.map((ys) => ys.map((y, i): Pixel => [i * 100, y]));
        const requests = lines.map((points, i) => ({
          text: `upper pool ${i}`,
          size: 13,
          italic: true,
          look: 'name',
          points,
          prefer: 0.4,
        }));
        const seated = seatLabels(requests, lines, room);
        seated.forEach(({ box }, i) => {
          for (const other of seated.slice(i + 1)) expect(overlaps(box, other.box)).toBe(false);
          for (const points of lines) {
            const extent = extentWithin(points, box.left, box.right)!;
            expect(extent[0] < box.bottom && extent[1] > box.top).toBe(false);
          }
        });
      }),
      { seed: 13 },
    );
  });
});

test('lines that lie apart all get their names', () => {
  const room: Box = { left: 0, top: 0, right: 400, bottom: 150 };
  const lines = [30, 70, 110].map((y): Pixel[] => [
    [0, y],
    [400, y],
  ]);
  const requests = lines.map((points) => ({ text: 'pond', size: 13, italic: true, look: 'name', points, prefer: 0.5 }));
  expect(seatLabels(requests, lines, room).length).toBe(3);
});

describe('flags', () => {
  const events = Array.from({ length: 200 }, (_, i) => ({ t: i * 3600, what: i % 2 ? 'pump on' : 'pump off' }));
  const span = 200 * 3600;

  test('never overlap, stay in the order of their moments and on the rail, and are as many as fit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 320, max: 1400 }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.constantFrom(1 as const, 2 as const),
        (width, at, flagLines) => {
          const window = minutesRound(at * span, span);
          const flags = flagsOf({ events, levels: {} }, '2031-06-01T06:00', window, undefined);
          const seated = seatFlags(flags, openAxis(span, window, width - 60), { left: 50, width, flagLines });
          expect(seated.length).toBeGreaterThanOrEqual(Math.floor(width / (flagLines === 1 ? 160 : 120)));
          seated.forEach((flag, i) => {
            expect(flag.width).toBeGreaterThanOrEqual(44);
            expect(flag.left).toBeGreaterThanOrEqual(-1e-9);
            expect(flag.left + flag.width).toBeLessThanOrEqual(width + 1e-6);
            const next = seated[i + 1];
            if (!next) return;
            expect(next.left).toBeGreaterThanOrEqual(flag.left + flag.width + FLAG.apart - 1e-6);
            expect(next.x).toBeGreaterThanOrEqual(flag.x);
          });
        },
      ),
      { seed: 14 },
    );
  });

  test('of the opened minutes come before all others', () => {
    const window = minutesRound(100 * 3600, span);
    const flags = flagsOf({ events, levels: {} }, '2031-06-01T06:00', window, undefined);
    const seated = seatFlags(flags, openAxis(span, window, 260), { left: 38, width: 328, flagLines: 2 });
    expect(seated.map(({ t }) => t)).toContain(100 * 3600);
  });

  test('a window is about the stop in it, and its minutes are counted from there', () => {
    const log = [
      { t: 100, what: 'pond at fill mark' },
      { t: 130, what: 'pump off' },
    ];
    expect(anchorOf(log, [70, 850])).toEqual({ t: 130, word: 'stop' });
    expect(anchorOf(log, [200, 900])).toBeUndefined();
    const [, stop] = flagsOf({ events: log, levels: {} }, '2031-06-01T06:00', [70, 850], undefined);
    expect(stop!.when).toBe('06:02');
  });
});
