/** Every check that needs no site: those of the laws, and of the integrator. */
import './weirs.ts';
import './pipes.ts';
import './pumps.ts';
import './media.ts';
import './open-water.ts';
import './integrator.ts';
import './closed-forms.ts';

export { type Check, checks, holds, type Outcome, outcomeOf } from './checks.ts';
