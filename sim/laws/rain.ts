/**
 * NRCS 24 h type II rainfall, fraction of the day's depth fallen by each hour.
 *
 * USDA NRCS National Engineering Handbook part 630, ch. 4, with its 11.75 h point; linear between the points. From
 * memory; 6, 11, 12.5, 13, 16 and 20 h agree with the closed form of Haan, Barfield & Hayes (1994), eq. 3.7, to 3 %.
 */
const TYPE_II_HOURS = [
  0, 2, 4, 6, 7, 8, 8.5, 9, 9.5, 9.75, 10, 10.5, 11, 11.5, 11.75, 12, 12.5, 13, 13.5, 14, 16, 20, 24,
];
const TYPE_II_FRACTION = [
  0, 0.022, 0.048, 0.08, 0.098, 0.12, 0.133, 0.147, 0.163, 0.172, 0.181, 0.204, 0.235, 0.283, 0.357, 0.663, 0.735,
  0.772, 0.799, 0.82, 0.88, 0.952, 1,
];

/** Fraction of a type II day's depth fallen by an hour of it, 0..24. */
export function typeTwoFraction(hour: number): number {
  if (hour <= 0) return 0;
  if (hour >= 24) return 1;
  let i = 0;
  while (hour > TYPE_II_HOURS[i + 1]) i++;
  const share = (hour - TYPE_II_HOURS[i]) / (TYPE_II_HOURS[i + 1] - TYPE_II_HOURS[i]);
  return TYPE_II_FRACTION[i] + share * (TYPE_II_FRACTION[i + 1] - TYPE_II_FRACTION[i]);
}

/** A stretch of rain of constant rate: from and to in s from the storm's start, rate in m/s. */
export interface RainStretch {
  readonly from: number;
  readonly to: number;
  readonly rate: number;
}

function heaviestWindow(hours: number): number {
  let best = 0;
  let most = -1;
  for (const knot of TYPE_II_HOURS) {
    for (const start of [knot, knot - hours]) {
      if (start < 0 || start + hours > 24) continue;
      const caught = typeTwoFraction(start + hours) - typeTwoFraction(start);
      if (caught > most + 1e-12) {
        most = caught;
        best = start;
      }
    }
  }
  return best;
}

/**
 * A storm as stretches of constant rate.
 *
 * @param depth of the whole storm, m
 * @param lasting s; a type II storm lasts at most a day
 * @param shape 'even', or 'scs2': the window of the type II day that holds the most rain in that time, scaled to depth
 */
export function stormStretches(depth: number, lasting: number, shape: 'even' | 'scs2'): RainStretch[] {
  if (shape === 'even') return [{ from: 0, to: lasting, rate: depth / lasting }];
  const hours = Math.min(24, lasting / 3600);
  const begin = heaviestWindow(hours);
  const caught = typeTwoFraction(begin + hours) - typeTwoFraction(begin);
  const inside = TYPE_II_HOURS.filter((h) => h > begin && h < begin + hours);
  const cuts = [begin, ...inside, begin + hours];
  const stretch = lasting / (3600 * hours);
  return cuts.slice(1).map((to, i) => {
    const from = cuts[i];
    const fallen = (depth * (typeTwoFraction(to) - typeTwoFraction(from))) / caught;
    const seconds = (to - from) * 3600 * stretch;
    const start = (from - begin) * 3600 * stretch;
    return { from: start, to: start + seconds, rate: fallen / seconds };
  });
}

/** Flow off a contributing surface, m³/s: C i A (rational method): rate m/s, area m², coefficient 0..1. */
export function rationalRunoff(rate: number, area: number, coefficient: number): number {
  return coefficient * rate * area;
}
