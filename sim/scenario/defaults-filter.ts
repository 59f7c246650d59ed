import { type Assumptions, BANDS } from './assume.ts';
import { basinParts, defaultCrest } from './defaults-watercourse.ts';
import { areaAt } from './profile.ts';
import type { DisplacedLayer, Filter, Media, MediaLayer, ProfilePoint } from './scenario.ts';
import type { SiteFile } from './schema.ts';

type FilterFile = NonNullable<SiteFile['filter']>;
type MediaFile = NonNullable<FilterFile['media']>;
type LayerFile = MediaFile['layers'][number];

const LIP_CD = 1.08;
const RIM_CD = 1;
const GAP = 0.005;
const SUBMERGED_WEIGHT = 60;
const LIFT_SLACK = 0.02;
const TANKS = 8;
/** The deposit takes its own settled volume out of the pores. */
export const BETA = 1;

export function defaultFilter(file: FilterFile, debris: number, assume: Assumptions): Filter {
  const media = file.media && defaultMedia(file.media, debris, assume);
  return {
    ...basinParts(file),
    displaced: file.displaced ?? (media ? mediaSolids(file.profile, media) : []),
    media,
    lip: defaultCrest(file.lip, 'filter.lip', LIP_CD, assume),
    rim: defaultCrest(file.rim, 'filter.rim', RIM_CD, assume),
  };
}

function defaultMedia(file: MediaFile, debris: number, assume: Assumptions): Media {
  return {
    bottom: file.bottom,
    area: file.area,
    perimeter: file.perimeter,
    gap: assume.or(file.gap, 'filter.media.gap', GAP, BANDS.gap),
    layers: file.layers.map((layer, i) => defaultLayer(layer, i, debris, assume)),
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

/** What a deposit takes of the pores is noted where one comes to pass. */
function defaultLayer(file: LayerFile, i: number, debris: number, assume: Assumptions): MediaLayer {
  const capture = file.capture ?? 0;
  const deposit = file.deposit ?? 0;
  const clogs = (debris > 0 && capture > 0) || deposit > 0;
  return {
    name: file.name ?? `layer ${i + 1}`,
    thickness: file.thickness,
    porosity: file.porosity,
    grain: file.grain,
    permittivity: file.permittivity,
    capture,
    beta: clogs ? assume.or(file.beta, `filter.media.layers[${i}].beta`, BETA, BANDS.beta) : (file.beta ?? BETA),
    deposit,
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
