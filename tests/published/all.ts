/** Every check: those of the laws, of the integrator, of the dye test, those that a whole site answers, and those against libraries. */
import './laws.ts';
import './integrator.ts';
import './dye.ts';
import './site-weirs.ts';
import './site-pipes.ts';
import './site-routing.ts';
import './site-pumps.ts';
import './site-water.ts';
import './libraries.ts';

export { type Check, checks, holds, type Outcome, outcomeOf } from './checks.ts';
