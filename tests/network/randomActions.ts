import fc from 'fast-check';

const share = fc.double({ min: 0, max: 1, noNaN: true }).map((x) => Math.round(x * 1000) / 1000);

/** What an action's deed may be aimed at, and the levels it may be about. */
export interface ActionPlaces {
  /** Where the pond is kept, m, and the span, s. */
  readonly level: number;
  readonly span: number;
  readonly filter: boolean;
  readonly topFeed: boolean;
  readonly autofill: boolean;
  /** Stones and streams. */
  readonly blockable: readonly string[];
  /** Basins by name with their floors, m, the pond first. */
  readonly floors: readonly (readonly [name: string, floor: number])[];
}

/** What is done on a site: anything, at any time or level, in any order. */
export const randomAction = fc.record({
  when: fc.constantFrom('at', 'at', 'at', 'rises', 'falls'),
  at: share,
  kind: fc.nat({ max: 15 }),
  which: fc.nat({ max: 30 }),
  x: share,
  for: fc.constantFrom(undefined, '5 min', '3 s', '2 h'),
});

export type RandomAction = typeof randomAction extends fc.Arbitrary<infer T> ? T : never;

/** The action as the file says it; undefined where the site lacks what it would be done on. */
export function actionFile(a: RandomAction, p: ActionPlaces): object | undefined {
  if (a.kind === 15) return { daily: ['08:00', '08:40'], do: 'pump' };
  const deed = deedFile(a, p);
  if (deed === undefined) return undefined;
  if (a.when === 'at') return { at: Math.round(a.at * p.span), ...deed };
  return { when: { basin: 'pond', [a.when]: -p.level + 0.04 * (a.at - 0.5) }, ...deed };
}

function deedFile({ kind, x, which, for: lasting }: RandomAction, p: ActionPlaces): object | undefined {
  const [basin, floor] = p.floors[which % p.floors.length];
  const deeds: (object | undefined)[] = [
    { do: 'pump', to: 'off' },
    { do: 'pump', to: 'on' },
    { do: 'pump', to: Math.round(120 * x) / 100 },
    { do: 'hose', to: x < 0.5 ? 'on' : 'off' },
    { do: 'power', to: 'off', for: lasting },
    { do: 'bottom valve', to: x < 0.2 ? 0 : x },
    { do: 'storm', depth: '20 mm', lasting: '20 min', shape: x < 0.5 ? 'even' : 'scs2' },
    { do: 'blockage', of: 'intake', to: x },
    { do: 'check valve', to: x < 0.5 ? 'failed' : 'sound' },
    { do: 'pump out', flow: '30 L/min', until: Math.max(p.floors[0][1], -p.level - 0.1 * x) },
    p.topFeed ? { do: 'top valve', to: x < 0.2 ? 0 : x } : undefined,
    { do: 'leak', in: basin, elevation: floor + 0.2 * x, area: 1e-5 },
    p.autofill ? { do: 'autofill', to: x < 0.5 ? 'off' : 'on' } : undefined,
    p.filter ? { do: 'clean filter' } : undefined,
    p.blockable.length > 0 ? { do: 'blockage', of: p.blockable[which % p.blockable.length], to: x } : undefined,
  ];
  return deeds[kind];
}
