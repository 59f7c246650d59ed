import type { ProfilePoint } from './scenario.ts';

/** Plan area (m²) of a profile at an elevation; at a ledge the one above it. Constant above the last point, 0 below the first. */
export function areaAt(profile: readonly ProfilePoint[], elevation: number): number {
  const last = profile[profile.length - 1];
  const first = profile[0];
  if (!first || !last || elevation < first[0]) return 0;
  if (elevation >= last[0]) return last[1];
  const above = profile.findIndex(([z]) => z > elevation);
  const [z1, a1] = profile[above] ?? last;
  const [z0, a0] = profile[above - 1] ?? first;
  return a0 + ((a1 - a0) * (elevation - z0)) / (z1 - z0);
}
