import { isObject } from '../scenario/fields.ts';
import type { Draft } from './draft.ts';
import { LOW_STRETCH, VAULT } from './layout.ts';
import { rockShare } from './numbers-pond.ts';
import { tidy } from './units.ts';

/** The pond from the tape: banks upright but for the shelf, rock from the floor to the liner's edge. */
export function pondPart(site: Draft): Record<string, unknown> {
  const { depth, mark, edge } = site.pond;
  const rock = rockShare(site.value('rock') as number | string);
  const line = site.raw('edge') ?? tidy(edge);
  return {
    shape: {
      ...planPart(site),
      length: site.figure('length'),
      width: site.figure('width'),
      depth: site.figure('depth'),
      ...shelfPart(site),
      ...(site.number('gravel') > 0 && { gravel: site.figure('gravel') }),
    },
    ...(rock > 0 && { displaced: [{ from: tidy(mark - depth), to: tidy(edge), fraction: rock }] }),
    fillMark: 0,
    rim: {
      crest: [
        [0, line],
        [tidy(LOW_STRETCH), line],
      ],
    },
  };
}

function planPart(site: Draft): Record<string, unknown> {
  const plan = site.value('plan');
  if (typeof plan === 'number') return { factor: site.raw('plan') ?? plan };
  return { plan: plan === 'oval' ? 'ellipse' : plan };
}

function shelfPart(site: Draft): Record<string, unknown> {
  const shelves = site.value('shelf') as readonly { depth: number; width: number }[];
  if (shelves.length === 0) return {};
  const raw = site.raw('shelf');
  if (raw !== undefined) return { shelves: isObject(raw) ? [raw] : raw };
  return { shelves: shelves.map(({ depth, width }) => ({ depth: tidy(depth), width: tidy(width) })) };
}

/** Intake, vault and pump. */
export function pumpParts(site: Draft): Record<string, unknown> {
  const { depth, mark, edge } = site.pond;
  const lip = mark - site.number('intakeLip');
  const floor = mark - Math.max(depth + VAULT.belowPond, VAULT.leastDepth);
  const suction = floor + VAULT.suction;
  const minimum = Math.min(suction + VAULT.overSuction, lip - VAULT.underIntake);
  return {
    intake: {
      width: site.figure('intakeWidth'),
      elevation: tidy(lip),
      blockage: site.figure('blockage'),
    },
    vault: {
      profile: [
        [tidy(floor), tidy(VAULT.area)],
        [tidy(edge), tidy(VAULT.area)],
      ],
    },
    pump: {
      curve: site.raw('pump') ?? site.value('pump'),
      efficiency: site.figure('efficiency'),
      suction: tidy(suction),
      minimum: tidy(minimum),
    },
  };
}
