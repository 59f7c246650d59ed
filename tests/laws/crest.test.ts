import { describe, expect, test } from 'vitest';
import { broadCrestCoefficient, crestFlow, IDEAL_CREST, makeCrest, villemonte } from '../../sim/laws/crest.ts';
import { derivative, integral, relativeError, worstSlope } from './differences.ts';

const out = new Float64Array(3);

function flow(crest: ReturnType<typeof makeCrest>, up: number, down = Number.NEGATIVE_INFINITY, open = 1): number {
  crestFlow(crest, up, down, open, out);
  return out[0];
}

const level = makeCrest(
  [
    [0, 0],
    [0.5, 0],
  ],
  1,
);
/** A stone out of level beside a level stretch, a V and a step straight up. */
const rough = makeCrest(
  [
    [0, 0.02],
    [0.3, 0],
    [0.5, 0],
    [0.6, 0.05],
    [0.6, 0.1],
    [0.9, 0.08],
  ],
  0.9,
);
const slab = makeCrest(
  [
    [0, 0.01],
    [0.4, 0],
  ],
  0.9,
  0.05,
  0.004,
);

describe('flow over a crest', () => {
  test('that is level is Cd (2/3)^1.5 √g b h^1.5', () => {
    for (const h of [1e-6, 0.02, 0.4]) {
      expect(relativeError(flow(level, h), (2 / 3) ** 1.5 * Math.sqrt(9.80665) * 0.5 * h ** 1.5)).toBeLessThan(1e-14);
    }
    expect(flow(level, 0)).toBe(0);
    expect(flow(level, -1)).toBe(0);
  });

  test('is the integral of its unit flow along the survey', () => {
    const pieces = [
      [0.3, 0, 0.02],
      [0.2, 0, 0],
      [0.1, 0, 0.05],
      [0.3, 0.08, 0.1],
    ];
    for (const up of [0.01, 0.03, 0.07, 0.09, 0.2]) {
      let whole = 0;
      for (const [width, low, high] of pieces) {
        const wet = high > up ? ((up - low) / (high - low)) * width : width;
        if (up <= low) continue;
        // In x = t³ the integrand is smooth at a dry end.
        const unit = (t: number): number => {
          const z = low + ((high - low) * (wet * (1 - t ** 3))) / width;
          return 3 * t * t * wet * 0.9 * IDEAL_CREST * Math.max(0, up - z) ** 1.5;
        };
        whole += integral(unit, 0, 1, 400);
      }
      expect(relativeError(flow(rough, up), whole)).toBeLessThan(1e-9);
    }
  });

  test('over a V is the triangular weir of the same coefficient, (4/5) C m h^2.5', () => {
    const vee = makeCrest(
      [
        [0, 1],
        [1, 0],
        [2, 1],
      ],
      1,
    );
    expect(relativeError(flow(vee, 0.3), 0.8 * IDEAL_CREST * 0.3 ** 2.5)).toBeLessThan(1e-14);
  });

  test('does not cancel where the ends differ in the last bit', () => {
    const flat = flow(level, 0.02);
    for (const bit of [2 ** -60, 2 ** -53, 1e-12]) {
      const off = makeCrest(
        [
          [0, 0],
          [0.5, bit],
        ],
        1,
      );
      expect(relativeError(flow(off, 0.02), flat)).toBeLessThan(1e-9);
    }
    const high = makeCrest(
      [
        [0, 41.3],
        [0.5, 41.3 + 2 ** -47],
      ],
      1,
    );
    expect(relativeError(flow(high, 41.32), flat)).toBeLessThan(1e-11);
  });

  test('turns its sign with the levels swapped', () => {
    for (const crest of [level, rough, slab]) {
      for (const [up, down] of [
        [0.03, -1],
        [0.06, 0.05],
        [0.12, 0.119999],
      ]) {
        crestFlow(crest, up, down, 0.7, out);
        const [q, byUp, byDown] = out;
        crestFlow(crest, down, up, 0.7, out);
        expect([...out]).toEqual([-q, -byDown, -byUp]);
      }
      crestFlow(crest, 0.05, 0.05, 1, out);
      expect(out[0]).toBe(0);
    }
  });

  test('is shortened by what blocks it, slopes and all', () => {
    crestFlow(rough, 0.06, 0.02, 1, out);
    const free = [...out];
    crestFlow(rough, 0.06, 0.02, 0.25, out);
    expect([...out]).toEqual(free.map((x) => 0.25 * x));
  });

  test('drowns piece by piece over each lowest point and never gains by it', () => {
    const low = makeCrest(
      [
        [0, 0],
        [0.3, 0],
      ],
      1,
    );
    const high = makeCrest(
      [
        [0, 0.03],
        [0.2, 0.03],
      ],
      1,
    );
    const both = makeCrest(
      [
        [0, 0],
        [0.3, 0],
        [0.3, 0.03],
        [0.5, 0.03],
      ],
      1,
    );
    for (const down of [-1, 0.01, 0.029, 0.035, 0.0499]) {
      expect(flow(both, 0.05, down)).toBeCloseTo(flow(low, 0.05, down) + flow(high, 0.05, down), 15);
    }
    let last = Number.POSITIVE_INFINITY;
    for (let down = -0.01; down <= 0.05; down += 1e-4) {
      const q = flow(both, 0.05, down);
      expect(q).toBeLessThanOrEqual(last);
      last = q;
    }
  });
});

describe('slopes of a crest', () => {
  const slopesAt = (crest: typeof level) => (args: readonly number[]) => {
    crestFlow(crest, args[0], args[1], 0.8, out);
    return { value: out[0], slopes: [out[1], out[2]] };
  };

  // Levels a little below and above every kink: dry and wet ends, drowned from zero, the chord, swapped levels.
  const ups = [0.005, 0.0195, 0.0205, 0.049, 0.051, 0.0795, 0.0805, 0.099, 0.101, 0.2];
  const downs = [-0.5, 0.001, 0.0198, 0.0202, 0.0495, 0.0505, 0.0797, 0.0803, 0.15, 0.3];
  test.each([
    ['level', level],
    ['rough', rough],
    ['slab of given length and nose', slab],
  ])('equal differences: %s', (_, crest) => {
    for (const up of ups) {
      for (const down of downs) {
        expect(worstSlope(slopesAt(crest), [up, down], 1e-5), `${up} over ${down}`).toBeLessThan(2e-6);
      }
    }
  });

  test.each([
    ['level', level],
    ['slab of given length and nose', slab],
  ])('are true on the chord and beside it, from a film to a flood: %s', (_, crest) => {
    for (const head of [5e-5, 2e-4, 1e-3, 0.021, 0.149, 0.151, 0.3]) {
      const low = crest.lowest;
      const seam = (1 - Math.min(1, Math.max(1e-3, 1.5e-4 / head))) ** (2 / 3);
      for (const s of [0.3 * seam, seam - 1e-5, seam + 1e-5, (1 + seam) / 2, 1 - 1e-5]) {
        if (s <= 0 || s >= 1) continue;
        // In the difference of levels, which is what is small here.
        const law = ([up, difference]: readonly number[]) => {
          crestFlow(crest, low + up, low + up - difference, 1, out);
          return { value: out[0], slopes: [out[1] + out[2], -out[2]] };
        };
        const gap = head * (1 - s);
        const [byUp, byGap] = law([head, gap]).slopes;
        const upDifference = derivative((x) => law([x, gap]).value, head, 1e-6 * head);
        const gapDifference = derivative((x) => law([head, x]).value, gap, 1e-6 * gap);
        expect(relativeError(byUp, upDifference), `${head} ${s}`).toBeLessThan(2e-4);
        expect(relativeError(byGap, gapDifference), `${head} ${s}`).toBeLessThan(2e-4);
      }
    }
  });

  test('stay under 100 m²/s a meter of crest at rest', () => {
    for (const head of [1e-3, 0.02, 0.15, 0.3]) {
      crestFlow(level, head, head - 1e-9, 1, out);
      expect(out[1] / 0.5).toBeLessThan(100);
      crestFlow(level, head, head, 1, out);
      expect(out[0]).toBe(0);
    }
  });
});

describe('the coefficient of a broad crest', () => {
  const pair = new Float64Array(2);
  test('has the slope of its differences on and between the points and under the rounding limit', () => {
    for (const ratio of [0.2, 0.395, 0.405, 0.55, 0.7, 0.9, 0.99, 1.01, 1.4, 1.49, 1.51, 2]) {
      for (const nose of [0, 0.002, 0.02]) {
        const head = ratio * 0.06;
        const value = (h: number): number => {
          broadCrestCoefficient(h, 0.06, nose, pair);
          return pair[0];
        };
        const slope = derivative(value, head, 1e-6);
        broadCrestCoefficient(head, 0.06, nose, pair);
        expect(Math.abs(pair[1] - slope)).toBeLessThan(1e-6);
      }
    }
  });

  test('has no jump at any point', () => {
    const value = (h: number): number => {
      broadCrestCoefficient(h, 1, 0.14 * 0.7, pair);
      return pair[0];
    };
    for (const ratio of [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.5]) {
      expect(value(ratio * (1 + 1e-13))).toBeCloseTo(value(ratio * (1 - 1e-13)), 10);
    }
  });
});

describe('the drowning of a crest', () => {
  const pair = new Float64Array(2);
  test('runs from 1 to 0, falling, with the slope of its differences', () => {
    const value = (s: number): number => {
      villemonte(s, pair);
      return pair[0];
    };
    expect(value(0)).toBe(1);
    expect(value(1)).toBe(0);
    for (const s of [0.01, 0.3, 0.7, 0.95, 0.999, 0.9992, 0.9995, 0.9999]) {
      const slope = derivative(value, s, 1e-6);
      villemonte(s, pair);
      expect(relativeError(pair[1], slope)).toBeLessThan(1e-6);
      expect(pair[1]).toBeLessThan(0);
    }
    const seam = (1 - 0.001) ** (2 / 3);
    expect(value(seam - 1e-13)).toBeCloseTo(value(seam + 1e-13), 9);
  });
});
