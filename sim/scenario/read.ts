import { allAssumed, derivedProblem } from '../sketch/derived.ts';
import { expandSketch, holdsSketch, withNumber } from '../sketch/expand.ts';
import { fillDefaults } from './defaults.ts';
import type { Tell } from './fields.ts';
import { parseJson } from './json.ts';
import type { Problem, Reading, Scenario } from './scenario.ts';
import { type PartlyFile, type SiteFile, site } from './schema.ts';
import { tellSense } from './sense/sense.ts';

/**
 * A scenario file's text as a checked site, or everything that is wrong with it at once. Never throws on any text.
 *
 * Figures come out in SI, defaults filled in and noted under `assumed`. Sense is checked on whatever could be read,
 * so that a mistyped unit in one place does not hide a lip above its rim in another.
 */
export function readScenario(text: string): Reading {
  const json = parseJson(text);
  if (!json.ok) {
    return {
      ok: false,
      problems: [{ place: `line ${json.line}:${json.column}`, found: json.found, wanted: json.wanted }],
    };
  }
  return readSite(json.value);
}

/** The same from a value that is already parsed. */
export function readSite(value: unknown): Reading {
  if (!holdsSketch(value)) return readWhole(value);
  const { file, problems, assumed } = expandSketch(value);
  const reading = readWhole(file);
  if (!reading.ok || problems.length > 0) {
    const further = reading.ok ? [] : reading.problems.flatMap((each) => derivedProblem(each, value, problems) ?? []);
    return { ok: false, problems: [...problems, ...further] };
  }
  const { scenario } = reading;
  return {
    ok: true,
    scenario: { ...scenario, assumed: allAssumed(scenario.assumed, assumed, value), sketched: value },
  };
}

/** The same site from its sketch with another figure at one of its numbers, `sketch.lip`; undefined where that makes none. */
export function siteWithNumber({ sketched, assumed }: Scenario, place: string, value: number): Scenario | undefined {
  if (!sketched) return undefined;
  const changed = withNumber(sketched, place, value);
  const { file, problems } = expandSketch(changed, { listed: false });
  const reading = problems.length === 0 ? readWhole(file) : undefined;
  return reading?.ok ? { ...reading.scenario, assumed, sketched: changed } : undefined;
}

/** A value that holds no sketch. */
function readWhole(value: unknown): Reading {
  const problems: Problem[] = [];
  const tell: Tell = (place, found, wanted) => {
    problems.push({ place: place === '' ? 'the file' : place, found, wanted });
  };
  const file = site.read(value, '', tell);
  if (file) tellSense(file as PartlyFile, tell);
  // Without a problem every required key has been read, so the file is whole.
  return file && problems.length === 0
    ? { ok: true, scenario: fillDefaults(file as SiteFile) }
    : { ok: false, problems };
}
