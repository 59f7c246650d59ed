/** At which step of the lesson a site stands. */
import type { Document } from '../state/document.ts';
import { type Setting, standsOn } from './settings.ts';

const LABEL = 'lesson: ';

/** What undo and redo name a step by. */
export const stepLabel = (title: string): string => LABEL + title.toLowerCase();

/** Whether nobody did anything to a site but take the lesson's steps. */
export const isLessonAlone = ({ past, now, future }: Document): boolean =>
  [...past, now, ...future].every(({ label }, i) => label.startsWith(LABEL) || (i === 0 && label === 'opened'));

export interface Standing {
  readonly step: number;
  /** False: the site has been changed since the step was set. */
  readonly isOn: boolean;
}

interface Step {
  readonly title: string;
  readonly sets: Setting;
}

/**
 * The step a site stands on after undo, redo or edits: the one it was last set to, else the step shown, else the
 * nearest one that sets the same, the earlier of two. Where it stands on none, the step shown, which no longer holds.
 *
 * @param base the teaching site's file as it comes
 * @param shown the step last shown
 */
export function standingOf({ now, past }: Document, base: unknown, steps: readonly Step[], shown: number): Standing {
  const on = steps.flatMap(({ sets }, i) => (standsOn(now.file, base, sets) ? [i] : []));
  if (on.length === 0) return { step: shown, isOn: false };
  const set = on.find((i) => now.label === stepLabel(steps[i]!.title));
  if (set !== undefined) return { step: set, isOn: true };
  if (on.includes(shown)) return { step: shown, isOn: true };
  if (past.length === 0) return { step: on[0]!, isOn: true };
  const far = (i: number): number => Math.abs(i - shown);
  return { step: on.reduce((best, i) => (far(i) < far(best) ? i : best)), isOn: true };
}
