/** The outcomes of all checks on the laws, for a bundle that is run by itself. */
import { checks, outcomeOf } from './laws.ts';

export const outcomes = checks.map(outcomeOf);
