/**
 * Whether a file that reads makes sense: elevations that do not contradict each other, curves that fall, water that
 * finds its way down, names that are known and stand once. Each part passes over what could not be read, for that
 * has been told already.
 */
import type { Tell } from '../fields.ts';
import type { PartlyFile } from '../schema.ts';
import { tellActions } from './actions.ts';
import { tellCircuit } from './circuit.ts';
import { tellElevations } from './elevations.ts';
import { tellNames } from './names.ts';
import { elevationsBy } from './order.ts';
import { tellProfiles } from './profiles.ts';

export function tellSense(file: PartlyFile, tell: Tell): void {
  const check = elevationsBy(tell);
  tellProfiles(file, tell);
  tellElevations(file, check);
  tellCircuit(file, tell, check);
  tellNames(file, tell);
  tellActions(file, tell, check);
  tellStart(file, tell);
  tellLimits(file, tell);
}

function tellStart({ start, pond, pump }: PartlyFile, tell: Tell): void {
  const empty = pond?.level === 'empty';
  if (start === 'running' && empty) tell('start', '"running" with an empty pond', '"standing"');
  if (start === 'running' && pump?.running === false)
    tell('start', '"running" with the pump off', '"standing" or "overnight"');
  if (empty && pond.fillMark === undefined) {
    tell('pond.fillMark', 'nothing, with an empty pond', 'the elevation to which the pond is to be filled');
  }
}

function tellLimits({ limits }: PartlyFile, tell: Tell): void {
  for (const key of ['drain-back', 'headroom'] as const) {
    const limit = limits?.[key];
    if (!Array.isArray(limit)) continue;
    const [fail = 0, pass = 0] = limit as readonly number[];
    if (fail > pass) tell(`limits["${key}"]`, `[${fail}, ${pass}]`, '[fail, pass], the fail mark the lesser');
  }
}
