import { type Assumptions, BANDS } from './assume.ts';
import { basinParts, defaultCrest } from './defaults-watercourse.ts';
import { areaAt } from './profile.ts';
import type { DisplacedLayer, Filter, Media, ProfilePoint } from './scenario.ts';
import type { SiteFile } from './schema.ts';

type FilterFile = NonNullable<SiteFile['filter']>;
type MediaFile = NonNullable<FilterFile['media']>;

const LIP_CD = 1.08;
const RIM_CD = 1;
const GAP = 0.005;
const SUBMERGED_WEIGHT = 60;
const LIFT_SLACK = 0.02;
const TANKS = 8;

export function defaultFilter(file: FilterFile, assume: Assumptions): Filter {
  const media = file.media && defaultMedia(file.media, assume);
  return {
    ...basinParts(file),
    displaced: file.displaced ?? (media ? mediaSolids(file.profile, media) : []),
    media,
    lip: defaultCrest(file.lip, 'filter.lip', LIP_CD, assume),
    rim: defaultCrest(file.rim, 'filter.rim', RIM_CD, assume),
  };
}

function defaultMedia(file: MediaFile, assume: Assumptions): Media {
  return {
    bottom: file.bottom,
    area: file.area,
    perimeter: file.perimeter,
    gap: assume.or(file.gap, 'filter.media.gap', GAP, BANDS.gap),
    layers: file.layers.map((layer, i) => ({
      name: layer.name ?? `layer ${i + 1}`,
      thickness: layer.thickness,
      porosity: layer.porosity,
      grain: layer.grain,
      permittivity: layer.permittivity,
      capture: layer.capture ?? 0,
      beta: layer.beta ?? 1,
    })),
    submergedWeight: assume.or(
      file.submergedWeight,
      'filter.media.submergedWeight',
      SUBMERGED_WEIGHT,
      BANDS.submergedWeight,
    ),
    holdDown: file.holdDown ?? 0,
    liftSlack: assume.or(file.liftSlack, 'filter.media.liftSlack', LIFT_SLACK),
    removal: file.removal ?? 0,
    tanks: file.tanks ?? TANKS,
  };
}

/** What the media's solids take out of the filter: each layer (1 − porosity) of its own share of the plan area. */
function mediaSolids(profile: readonly ProfilePoint[], media: Media): DisplacedLayer[] {
  let from = media.bottom;
  return media.layers.map(({ thickness, porosity }) => {
    const to = from + thickness;
    const layer = { from, to, fraction: ((1 - porosity) * media.area) / areaAt(profile, (from + to) / 2) };
    from = to;
    return layer;
  });
}
