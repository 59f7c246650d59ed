/** Every check of a law by itself. */
import './weirs.ts';
import './pipes.ts';
import './pumps.ts';
import './media.ts';
import './open-water.ts';
import './closed-forms.ts';

export { type Check, checks, holds, type Outcome, outcomeOf } from './checks.ts';
