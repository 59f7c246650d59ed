import type { ReactiveControllerHost } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Case } from '../state/case.ts';
import type { Session } from '../state/session.ts';
import type { Stage } from '../views/stage.ts';

/** What the room of the filter needs of the page. */
export interface Around {
  readonly host: ReactiveControllerHost;
  readonly session: Session;
  readonly engine: Engine;
  readonly stage: Stage;
  /** The case kept beside the present one. */
  readonly kept: () => Case | undefined;
}
