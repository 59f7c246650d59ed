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

/** Distance by which a component has to be on its own side before its trigger is armed again. */
export function margin({ value }: Trigger): number {
  return 1e-12 * (1 + Math.abs(value));
}

export function isPast(trigger: Trigger, y: Float64Array): boolean {
  return trigger.direction * (y[trigger.component] - trigger.value) >= 0;
}

/** Arms what has gone back to its own side. */
export function rearm(triggers: readonly Trigger[], y: Float64Array): void {
  for (const t of triggers) if (!t.armed && t.direction * (y[t.component] - t.value) < -margin(t)) t.armed = true;
}

/**
 * Where the step at hand must end for a trigger's sake, as θ; −1 where it need not. That is where an armed trigger fires,
 * and where another goes back to its own side if it is past its value again at the end: unseen it could not fire.
 */
export function crossing(t: Trigger, step: RosenbrockStep): number {
  const k = t.component;
  if (!t.armed && !isPast(t, step.end)) return -1;
  return firstCrossing(step.start[k], step.end[k], step.inner1[k], step.inner2[k], goal(t), heading(t));
}

/** Value looked for, and from where: those of the trigger, or of its way back. */
export function goal(t: Trigger): number {
  return t.armed ? t.value : t.value - t.direction * margin(t);
}

export function heading({ armed, direction }: Trigger): 1 | -1 {
  return (armed ? direction : -direction) as 1 | -1;
}

/** The trigger for whose sake the step at hand must end first, its dense output prepared. */
export function firstReached(triggers: readonly Trigger[], step: RosenbrockStep): Trigger | undefined {
  let first: Trigger | undefined;
  let earliest = 2;
  for (const t of triggers) {
    const theta = crossing(t, step);
    if (theta < 0 || theta >= earliest) continue;
    first = t;
    earliest = theta;
  }
  return first;
}
