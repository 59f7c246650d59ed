/** The rules by which labels find their seats, each on a sheet drawn by hand. Every character is 6 px wide here. */
import { describe, expect, test } from 'vitest';
import type { Bounds, LabelRequest, Measure, Obstacle, Placed, Seat } from '../../web/section/labels/index.ts';
import { placeLabels } from '../../web/section/labels/index.ts';

const measure: Measure = (text) => 6 * text.length;

/** 600 × 300, the ground at y = 150. */
const bounds: Bounds = {
  frame: { left: 0, top: 0, right: 600, bottom: 300 },
  rails: { top: 4, second: 52, bottom: 262 },
  sky: [{ left: 0, top: 0, right: 600, bottom: 150 }],
  earth: [{ left: 0, top: 150, right: 600, bottom: 300 }],
};

const label = (id: string, x: number, y: number, seats: Seat[], more: Partial<LabelRequest> = {}): LabelRequest => ({
  id,
  priority: 1,
  lines: [
    { text: id, style: 'name' },
    { text: '235 L/min', style: 'figure' },
  ],
  anchor: { x, y },
  seats,
  ...more,
});

const box = (kind: Obstacle['kind'], left: number, top: number, right: number, bottom: number): Obstacle => ({
  kind,
  points: [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ],
  closed: true,
});

const place = (requests: LabelRequest[], obstacles: Obstacle[] = [], on: Bounds = bounds): Placed[] =>
  placeLabels(requests, obstacles, on, measure);

const one = (request: LabelRequest, obstacles: Obstacle[] = [], on: Bounds = bounds): Placed =>
  place([request], obstacles, on)[0];

describe('a label', () => {
  test('takes the first of its seats that is free', () => {
    expect(one(label('pool', 100, 150, ['top rail', 'second rail'])).seat).toBe('top rail');
    const taken = box('frame', 0, 0, 600, 46);
    expect(one(label('pool', 100, 150, ['top rail', 'second rail']), [taken]).seat).toBe('second rail');
  });

  test('is placed before another of a higher number', () => {
    const seats: Seat[] = ['sky right'];
    const bare: Bounds = { ...bounds, sky: [{ left: 110, top: 90, right: 190, bottom: 140 }] };
    const both = [label('second', 80, 150, seats, { priority: 2 }), label('first', 84, 150, seats, { priority: 1 })];
    expect(place(both, [], bare).map(({ id }) => id)).toEqual(['first']);
  });

  test('keeps 4 px around its text free', () => {
    // Text from y = 4 to 36: a line at 39 is too near, one at 41 is not.
    const line = (y: number): Obstacle => ({
      kind: 'line',
      points: [
        { x: 0, y },
        { x: 600, y },
      ],
    });
    expect(one(label('pool', 100, 150, ['top rail', 'second rail']), [line(39)]).seat).toBe('second rail');
    expect(one(label('pool', 100, 150, ['top rail', 'second rail']), [line(41)]).seat).toBe('top rail');
  });

  test('never covers the anchor of another', () => {
    const others = [label('pipe', 130, 30, []), label('valve', 80, 30, [])];
    const [pool] = place([label('pool', 100, 150, ['top rail', 'second rail']), ...others]);
    expect(pool.seat).toBe('second rail');
  });

  test('stands in its own water without leader or dot, and in no other', () => {
    const water = { box: { left: 200, top: 160, right: 330, bottom: 250 }, tint: 'deep' as const };
    const pond = box('water', 190, 150, 340, 260);
    const own = { ...pond, of: 'pond' };
    const seats: Seat[] = ['inside water', 'top rail'];
    const placed = one(label('pond', 260, 150, seats, { water }), [own]);
    expect(placed).toMatchObject({ seat: 'inside water', ground: 'deep water', leader: [], dot: undefined });
    expect(one(label('pond', 260, 150, seats, { water }), [pond]).seat).toBe('top rail');
  });

  test('gives up its figure before it goes to the press', () => {
    const narrow: Bounds = { ...bounds, sky: [{ left: 120, top: 100, right: 175, bottom: 124 }] };
    const lone = label('stone', 90, 150, ['sky right']);
    expect(one(lone, [], narrow)).toMatchObject({ form: 'figure dropped', lines: [{ text: 'stone' }] });
    const none: Bounds = { ...bounds, sky: [] };
    expect(place([lone], [], none)).toEqual([]);
  });

  test('is worded shorter before its figure is dropped', () => {
    const narrow: Bounds = { ...bounds, sky: [{ left: 120, top: 80, right: 160, bottom: 124 }] };
    const short = [
      { text: 'stone', style: 'name' as const },
      { text: '9 gpm', style: 'figure' as const },
    ];
    expect(one(label('stone', 90, 150, ['sky right'], { short }), [], narrow).form).toBe('short');
  });

  test('stays inside the frame at its right end, where its leader meets it from below', () => {
    const placed = one(label('vault', 590, 150, ['top rail']));
    expect(placed.box.right).toBeLessThanOrEqual(600);
    expect(placed.leader.every(({ x }) => x === 590)).toBe(true);
  });
});

describe('on a rail', () => {
  test('labels stand in the order of their anchors, whatever their priority', () => {
    const placed = place([
      label('right', 140, 150, ['top rail'], { priority: 1 }),
      label('left', 100, 150, ['top rail'], { priority: 2 }),
    ]);
    const at = (id: string): number => placed.find((each) => each.id === id)!.box.left;
    expect(at('left')).toBeLessThan(at('right'));
  });

  test('a label is pushed right until 16 px lie between it and the one before', () => {
    const placed = place([label('left', 100, 150, ['top rail']), label('right', 120, 150, ['top rail'])]);
    expect(placed[0].box.left).toBe(100);
    expect(placed[1].box.left).toBe(placed[0].box.right + 16);
  });

  test('a label alone stands over its anchor, its leader straight down', () => {
    const { box, leader, dot } = one(label('pool', 100, 150, ['top rail']));
    expect(box.left).toBe(100);
    expect(leader.map(({ x }) => x)).toEqual([100, 100]);
    expect(dot).toEqual({ x: 100, y: 150 });
  });
});

describe('a leader', () => {
  const legs = ({ leader }: Placed) => leader.slice(1).map((to, i) => [leader[i], to] as const);

  test('is vertical, or one level piece and one slope, or under the drawing one level piece and one upright', () => {
    const spread = [60, 75, 90, 300, 310, 320].map((x, i) =>
      label(`part ${i}`, x, 150, ['top rail', 'second rail', 'sky right', 'blank earth']),
    );
    const placed = place(spread);
    expect(placed.length).toBe(6);
    for (const each of placed) {
      const level = legs(each).filter(([a, b]) => a.y === b.y).length;
      const upright = legs(each).filter(([a, b]) => a.x === b.x).length;
      if (each.leader.length === 2) expect(level + upright).toBe(1);
      else expect([each.leader.length, level]).toEqual([3, 1]);
    }
  });

  test('ends at the anchor, with the dot there', () => {
    const { leader, dot, id } = one(label('stone', 300, 150, ['sky right']));
    expect([id, leader.at(-1), dot]).toEqual(['stone', { x: 300, y: 150 }, { x: 300, y: 150 }]);
  });

  const pipe = (points: [number, number][]): Obstacle => ({
    kind: 'pipe',
    points: points.map(([x, y]) => ({ x, y })),
    width: 8,
  });

  test('crosses a pipe at right angles', () => {
    const level = pipe([
      [0, 100],
      [600, 100],
    ]);
    expect(one(label('pool', 100, 150, ['top rail']), [level]).leader.map(({ x }) => x)).toEqual([100, 100]);
  });

  test('crosses no pipe at another angle', () => {
    const oblique = pipe([
      [0, 50],
      [600, 140],
    ]);
    expect(place([label('pool', 300, 150, ['top rail'])], [oblique])).toEqual([]);
  });

  test('does not run along a pipe', () => {
    const upright = pipe([
      [102, 50],
      [102, 120],
    ]);
    expect(place([label('pool', 100, 150, ['top rail'])], [upright])).toEqual([]);
  });

  test('misses stones, but for the one it points at', () => {
    const stone = box('stone', 80, 80, 120, 100);
    expect(place([label('pool', 100, 150, ['top rail'])], [stone])).toEqual([]);
    expect(place([label('pool', 100, 150, ['top rail'])], [{ ...stone, of: 'pool' }]).length).toBe(1);
  });

  test('crosses no water but that in which its anchor stands', () => {
    const pool = box('water', 80, 70, 160, 110);
    expect(place([label('valve', 100, 150, ['top rail'])], [pool])).toEqual([]);
    expect(place([label('rack', 100, 100, ['top rail'])], [pool]).length).toBe(1);
  });

  test('crosses no other leader', () => {
    // The left anchor lies lower and behind the right one's leader for every text to the right of both.
    const labels = place([
      label('a', 200, 60, ['sky right'], { priority: 1 }),
      label('b', 190, 140, ['sky right'], { priority: 2 }),
      label('c', 205, 100, ['sky right'], { priority: 3 }),
    ]);
    expect(labels.length).toBe(3);
    const side = (p: Pt, q: Pt, r: Pt): number => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
    for (const one of labels) {
      for (const other of labels) {
        if (one === other) continue;
        for (const [a, b] of legs(one)) {
          for (const [c, d] of legs(other)) {
            expect(side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0).toBe(false);
          }
        }
      }
    }
  });
});

type Pt = { readonly x: number; readonly y: number };
