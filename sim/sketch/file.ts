import type { Draft } from './draft.ts';
import { filterPart, watercoursePart } from './falls.ts';
import { layOver } from './overlay.ts';
import { plumbingPart } from './plumbing.ts';
import { pondPart, pumpParts } from './pond.ts';
import { useParts } from './use.ts';

/** A file that holds a sketch, and any parts of a site beside it. */
export type Sketched = Readonly<Record<string, unknown>> & { readonly sketch: unknown };

/** The plain file of a site that is being expanded. */
export function fileOf(site: Draft, raw: Sketched): unknown {
  const { sketch, ...beside } = raw;
  const { title, notes, ...over } = beside;
  const { weather, supply, actions, ...day } = useParts(site, sketch);
  const parts = {
    title,
    notes,
    ...day,
    pond: pondPart(site),
    ...pumpParts(site),
    plumbing: plumbingPart(site),
    filter: filterPart(site),
    watercourse: watercoursePart(site),
    weather,
    supply,
    actions,
  };
  const file = layOver(parts, over) as Record<string, unknown>;
  return Object.fromEntries(Object.entries(file).filter(([, part]) => part !== undefined));
}
