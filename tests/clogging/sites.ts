import { readFileSync } from 'node:fs';
import { startVolumes } from '../../sim/begin.ts';
import { March } from '../../sim/march.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { settingsOf } from '../../sim/network/start.ts';
import { readSite } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

// biome-ignore lint/suspicious/noExplicitAny: a file that each test changes in its own way
export type File = any;

const terrace = readFileSync(new URL('../results/terrace-48h.json', import.meta.url), 'utf8');

/** A terrace that runs from the start in its balance, without weather, hose or actions; a file to be changed. */
export function siteWith(change: (file: File) => void = () => {}): Scenario {
  const file: File = JSON.parse(terrace);
  Object.assign(file, { start: 'running', span: '1 d', weather: {}, actions: [], display: 'metric' });
  delete file.supply;
  file.pump.running = true;
  change(file);
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.scenario;
}

/** One layer of stones so coarse that the pump feels none of their loss, and no gap: what goes through hardly changes. */
export function thinLayer(debris: number, span: string, more: (file: File) => void = () => {}): Scenario {
  return siteWith((file) => {
    file.debris = debris;
    file.span = span;
    file.filter.media.layers = [{ name: 'thin', thickness: 0.02, porosity: 0.5, grain: 0.05, capture: 5 }];
    file.filter.media.gap = 0;
    more(file);
  });
}

/** A run of a site that follows the deposits at some fineness. */
export function marchOf(s: Scenario, fineness: number): March {
  const network = assemble(s);
  const march = new March(s, network, {
    settings: settingsOf(s, network, 1),
    volumes: startVolumes(s, network),
    actions: s.actions,
    weather: true,
    cutOut: true,
    pumpSpeed: 1,
    debris: fineness,
  });
  march.to(s.span);
  march.finish();
  return march;
}
