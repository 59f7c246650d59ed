import { type Storage, volumeAt } from '../laws/storage.ts';
import type { Media } from '../scenario/scenario.ts';

/** Water of a filter by where it stands, m³. */
export interface Waters {
  /** Under the media. */
  plenum: number;
  /** In the pores of what is wet of the media. */
  pore: number;
  /** In the gap round them. */
  gap: number;
  /** Between media and level. */
  free: number;
  /** Beside the media beyond the gap: it stands still. */
  beside: number;
}

/**
 * Where the water of a filter stands at a level.
 *
 * @param storage of the filter's vessel, media's solids taken out
 * @param porosity present, by layer from the bottom up
 * @param width of the gap, m
 * @param level m
 */
export function watersAt(
  storage: Storage,
  media: Media,
  porosity: readonly number[],
  width: number,
  level: number,
): Waters {
  let wet = 0;
  let open = 0;
  let top = media.bottom;
  media.layers.forEach(({ thickness }, i) => {
    const depth = Math.min(thickness, Math.max(0, level - top));
    wet += depth;
    open += depth * porosity[i];
    top += thickness;
  });
  const under = volumeAt(storage, Math.min(level, media.bottom));
  const within = volumeAt(storage, Math.min(level, top));
  const pore = media.area * open;
  const gap = media.perimeter * width * wet;
  return {
    plenum: under,
    pore,
    gap,
    free: volumeAt(storage, level) - within,
    beside: Math.max(0, within - under - pore - gap),
  };
}
