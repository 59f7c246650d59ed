/** Dials of the water itself: the pond's mark, edge and size, the stones and surfaces of the pools. */
import type { Pool } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { settingIn } from '../../sim/studies/setting.ts';
import { type Dialed, figure, lowest, type Ruler, ruler } from './dials-kinds.ts';

/** A level that must stay under an edge, or over a floor, stays so by this, m. */
export const CLEAR = 0.005;

const clamp = (z: number, low: number, high: number): number => Math.max(low, Math.min(high, z));

/** How the site stands with its water below the rim: a span of a quarter of a meter of it. */
export function underRim({ base }: Dialed): readonly [number, number] {
  const rim = lowest(base.pond.rim.crest);
  return [Math.max(rim - 0.25, base.intake.elevation + CLEAR), rim - CLEAR];
}

export function fillMark(site: Dialed): Ruler | undefined {
  return ruler(site, 'fill mark', figure('pond.fillMark', 'length'), underRim(site), site.now.pond.fillMark);
}

export function edge(site: Dialed): Ruler | undefined {
  const { pond, autofill } = site.base;
  const rim = lowest(pond.rim.crest);
  const water = Math.max(pond.fillMark ?? -Infinity, autofill?.set ?? -Infinity, pond.overflow?.elevation ?? -Infinity);
  const span = [clamp(rim - 0.1, Math.min(water + CLEAR, rim), rim), rim + 0.1] as const;
  return ruler(site, 'liner edge', { kind: 'crest', place: 'pond.rim.crest' }, span, lowest(site.now.pond.rim.crest));
}

interface Sited {
  readonly pool: Pool;
  readonly now: Pool | undefined;
  readonly place: string;
}

/** The pools, the last before the pond first: what it holds comes home first. */
function pools({ base, now }: Dialed): Sited[] {
  return base.watercourse
    .flatMap((reach, i): Sited[] => {
      const there = now.watercourse[i];
      if (reach.kind !== 'pool') return [];
      return [{ pool: reach, now: there?.kind === 'pool' ? there : undefined, place: `watercourse[${i}]` }];
    })
    .reverse();
}

/** The stones down which the water comes home, pool by pool, the main one of each first. */
export function stones(site: Dialed): (Ruler | undefined)[] {
  return pools(site).flatMap(({ pool, now, place }) =>
    pool.stones
      .map((stone, i) => ({ stone, i }))
      .sort((a, b) => Number(b.stone.main) - Number(a.stone.main))
      .map(({ stone, i }) => {
        const crest = lowest(stone.crest);
        const [floor, brim] = [pool.profile[0][0] + CLEAR, lowest(pool.rim.crest) - CLEAR];
        const span = [clamp(crest - 0.05, floor, crest), clamp(crest + 0.05, crest, brim)] as const;
        const there = now?.stones[i];
        const setting = { kind: 'crest', place: `${place}.stones[${i}].crest` } as const;
        return ruler(site, stone.name, setting, span, there && lowest(there.crest));
      }),
  );
}

const topArea = (profile: readonly (readonly [number, number])[] | undefined): number | undefined =>
  profile?.[profile.length - 1]?.[1];

/** The last pool before the pond first. */
export function poolSurfaces(site: Dialed): (Ruler | undefined)[] {
  return pools(site).map(({ pool, now, place }) => surface(site, pool.name, place, pool, now));
}

function surface(site: Dialed, name: string, place: string, base: Profiled, now: Profiled | undefined) {
  const area = topArea(base.profile) ?? 0;
  const setting = { kind: 'areas', place: `${place}.profile` } as const;
  const note = 'at its brim';
  return area > 0
    ? ruler(site, `${name}’s surface`, setting, [area / 2, area * 1.5], topArea(now?.profile), note)
    : undefined;
}

type Profiled = Pick<Pool, 'profile'>;

/** A pond's length and width, or its surface where a survey gave its profile. */
export function pondSize(site: Dialed): (Ruler | undefined)[] {
  const { base, now, opened, file } = site;
  if (valueAt(file, 'pond.shape') === undefined) return [surface(site, 'pond', 'pond', base.pond, now.pond)];
  return (['length', 'width'] as const).map((key) => {
    const place = `pond.shape.${key}`;
    const setting = figure(place, 'length');
    const was = settingIn(opened, setting);
    if (was === undefined) return undefined;
    const now = settingIn(file, setting) ?? was;
    const far = now < was / 3 || now > was * 3;
    return ruler(site, `pond’s ${key}`, setting, [was * 0.8, was * 1.25], far ? was : now);
  });
}
