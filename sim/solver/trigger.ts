import { firstCrossing } from './dense.ts';
import type { RosenbrockStep } from './step.ts';

/**
 * A switch: one component of the state reaching a value from one side.
 *
 * It fires once when it gets there and is armed again when the component is back on its own side. A trigger that is
 * already past its value when it is set is not armed: who sets it decides what that means.
 */
export interface Trigger {
  readonly component: number;
  readonly value: number;
  readonly direction: 1 | -1;
  armed: boolean;
}

/** Distance by which a component has to go back before its trigger is armed again, relative to its value. */
const BACK = 1e-12;

export function isPast(trigger: Trigger, y: Float64Array): boolean {
  return trigger.direction * (y[trigger.component] - trigger.value) >= 0;
}

/** Arms what has gone back to its own side. */
export function rearm(triggers: readonly Trigger[], y: Float64Array): void {
  for (const t of triggers) {
    const past = t.direction * (y[t.component] - t.value);
    if (!t.armed && past < -BACK * (1 + Math.abs(t.value))) t.armed = true;
  }
}

/** Earliest armed crossing inside the step at hand, as θ; 2 where there is none. Its dense output must be prepared. */
export function earliestCrossing(triggers: readonly Trigger[], step: RosenbrockStep): number {
  let earliest = 2;
  for (const t of triggers) {
    if (!t.armed) continue;
    const k = t.component;
    const theta = firstCrossing(step.start[k], step.end[k], step.inner1[k], step.inner2[k], t.value, t.direction);
    if (theta >= 0 && theta < earliest) earliest = theta;
  }
  return earliest;
}
