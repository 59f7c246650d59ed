import type { MapAnswer, Plane } from '../../sim/map/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** The running balance over a plane of settings. */
export interface MapRequest {
  readonly want: 'map';
  readonly text: string;
  readonly display: Scenario['display'] | undefined;
  readonly plane: Plane;
}

export interface MapGiven {
  kind: 'map';
  map: MapAnswer;
  /** Where the site lies on it and where all checks hold, sentence by sentence. */
  sentences: readonly string[];
}
