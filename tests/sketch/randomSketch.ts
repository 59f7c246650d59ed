import fc from 'fast-check';

const FOOT = 0.3048;
const INCH = 0.0254;
const GPH = 3.785411784e-3 / 3600;

const between = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1000 }).map((n) => least + ((most - least) * n) / 1000);
/** Small and large alike. */
const anySize = (least: number, most: number): fc.Arbitrary<number> =>
  between(Math.log(least), Math.log(most)).map((x) => Math.min(most, Math.max(least, Math.exp(x))));
const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined });

const numbers = fc.record({
  length: anySize(3 * FOOT, 200 * FOOT),
  width: anySize(2 * FOOT, 200 * FOOT),
  depth: anySize(10 * INCH, 12 * FOOT),
  plan: maybe(fc.oneof(fc.constantFrom('freeform', 'oval', 'rectangle'), between(0.6, 1))),
  shelf: maybe(fc.constant('none')),
  rock: maybe(fc.oneof(fc.constantFrom('little', 'usual', 'much'), between(0, 0.35))),
  edge: maybe(between(INCH / 2, 12 * INCH)),
  flow: anySize(600 * GPH, 60000 * GPH),
  /** The pump's head over what it lifts to. */
  headOver: between(1.25, 4),
  curve: fc.boolean(),
  size: maybe(fc.constantFrom('1 1/2 in', '2 in', '3 in', '4 in', '6 in', '50 mm', '63 mm')),
  pipeLength: maybe(anySize(2 * FOOT, 200 * FOOT)),
  elbows: maybe(fc.integer({ min: 0, max: 12 })),
  checkValve: maybe(fc.constantFrom('yes', 'no', 'unknown')),
  feeds: maybe(fc.constantFrom('both', 'bottom', 'top')),
  bottomValve: maybe(between(0.1, 1)),
  topValve: maybe(between(0.1, 1)),
  lip: maybe(anySize(24 * INCH, 10 * FOOT)),
  stone: maybe(anySize(6 * INCH, 10 * FOOT)),
  poolArea: maybe(anySize(0.2, 50)),
  /** Of the fall there is between the lip and the pond's edge, less what a stone needs. */
  stream: maybe(between(0.05, 0.95)),
  bucket: maybe(fc.tuple(fc.constantFrom('5 gal', '10 L', 0.012), between(10, 90))),
  autofill: maybe(fc.constantFrom('none', 'pond', 'vault')),
  climate: maybe(fc.constantFrom('cool', 'warm', 'hot dry')),
});

type Numbers = typeof numbers extends fc.Arbitrary<infer T> ? T : never;

const SLOPE = 0.03;

/** A sketch whose numbers are within their ranges and fit each other: a vault in the pond, a pump that lifts, a stone's fall. */
export const sketch: fc.Arbitrary<Record<string, unknown>> = numbers
  .filter(({ length, width }) => 0.6 * length * width > 0.7)
  .map(sketchOf);

const known = (keys: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(keys).filter(([, value]) => value !== undefined));

function sketchOf(n: Numbers): Record<string, unknown> {
  const lip = n.lip ?? 30 * INCH;
  const fall = lip - (n.edge ?? 3 * INCH) - 8 * INCH - 1e-3;
  const stream = n.stream === undefined ? undefined : Math.min(200 * FOOT, (fall * n.stream) / SLOPE);
  const head = Math.min(60, Math.max(1.5, (lip + 4 * INCH) * n.headOver));
  const pump = n.curve
    ? [
        [0, head],
        [n.flow / 2, head * 0.8],
        [n.flow, head * 0.3],
      ]
    : { flow: n.flow, head };
  const { length, width, depth, plan, shelf, rock, edge, feeds, bottomValve, topValve } = n;
  const { stone, poolArea, bucket, autofill, climate } = n;
  const pipe = known({ size: n.size, length: n.pipeLength, elbows: n.elbows, checkValve: n.checkValve });
  return known({
    ...{ length, width, depth, plan, shelf, rock, edge, pump, feeds, bottomValve, topValve },
    ...{ lip: n.lip, stone, poolArea, stream, bucket, autofill, climate },
    pipe: Object.keys(pipe).length > 0 ? pipe : undefined,
  });
}
