/** What a site of one's own begins with. */
import type { Display } from '../../sim/quantity/index.ts';

/** Invented figures: the three of the pond and the two on the pump's box. Everything else is assumed. */
const EXAMPLES = {
  us: { length: '11 ft', width: '8 ft', depth: '24 in', pump: { flow: '3000 gph', head: '14 ft' } },
  metric: { length: '3.4 m', width: '2.4 m', depth: '600 mm', pump: { flow: '11000 L/h', head: '4.2 m' } },
} as const;

/** The smallest file that answers, in the units of a tape. */
export const newSketch = (display: Display): { readonly title: string; readonly sketch: unknown } => ({
  title: 'A pond of my own',
  sketch: EXAMPLES[display],
});

/** The invented texts, by their places: as long as one of them stands, nobody has measured it. */
export const EXAMPLE_TEXTS: ReadonlyMap<string, readonly string[]> = new Map(
  (['length', 'width', 'depth', 'pump.flow', 'pump.head'] as const).map((key) => {
    const [first, second] = key.split('.') as [keyof typeof EXAMPLES.us, 'flow' | 'head' | undefined];
    const texts = [EXAMPLES.us, EXAMPLES.metric].map((example) => {
      const value = example[first];
      return typeof value === 'string' ? value : value[second ?? 'flow'];
    });
    return [`sketch.${key}`, texts] as const;
  }),
);
