/** Words of the close-up lie on none of the others, whatever the site, the width and the units. */
import { describe, expect, test } from 'vitest';
import type { Display } from '../../sim/quantity/index.ts';
import { vesselScale } from '../../web/section/close-up.ts';
import { boxOfText } from '../../web/section/close-up-text.ts';
import { closeUpWords } from '../../web/section/close-up-words.ts';
import { sceneOf } from '../../web/section/layout.ts';
import type { TextMark } from '../../web/section/marks.ts';
import { settingsAt } from '../../web/section/settings.ts';
import { sheetOf, type View } from '../../web/section/sheet.ts';
import { momentAt } from '../../web/state/moment.ts';
import { demoSites } from './labelsScene.ts';

const sites = demoSites().filter(({ scenario }) => scenario.filter);

function wordsIn(site: (typeof sites)[number], width: number, display: Display, view: View, share: number): TextMark[] {
  const scenario = { ...site.scenario, display };
  const sheet = sheetOf(scenario, width, undefined, view);
  const moment = momentAt(site.series, share * scenario.span);
  const settings = settingsAt(scenario, site.answer.events, moment.t);
  return closeUpWords(sheet.scene, sheet.scale, moment, settings).filter((mark) => mark.kind === 'text');
}

function overlaps(marks: readonly TextMark[]): string[] {
  const boxes = marks.map((mark) => ({ text: mark.text, ...boxOfText(mark) }));
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom - 1 && b.top < a.bottom - 1)
      .map((b) => `${a.text} | ${b.text}`),
  );
}

describe.each(sites.map((site) => [site.name, site] as const))('words of the close-up of %s', (_, site) => {
  test.each([328, 358, 600, 788, 818, 984])('lie on none of the others at %i px', (width) => {
    for (const display of ['metric', 'us'] as const)
      for (const share of [0, 0.5]) expect(overlaps(wordsIn(site, width, display, 'filter', share))).toEqual([]);
  });

  test.each([
    [600, 330],
    [560, 300],
    [328, 220],
  ])('lie on none of the others in a vessel drawn beside another, %i by %i px', (width, tall) => {
    const a = vesselScale(sceneOf(site.scenario), width, tall)!;
    for (const display of ['metric', 'us'] as const)
      expect(overlaps(wordsIn(site, width, display, { vessel: a }, 0))).toEqual([]);
  });
});

test('layers are named on a desk, and on a projector where the vessel leaves them room', () => {
  const isNamed = (width: number) => (site: (typeof sites)[number]) =>
    wordsIn(site, width, 'metric', 'filter', 0).some(({ text }) => text.startsWith('gap'));
  expect(sites.filter(isNamed(984))).toEqual(sites);
  const shown = sites.filter(isNamed(824)).map(({ name }) => name);
  expect(shown).toEqual(expect.arrayContaining(['courtyard.json', 'teaching-filter.json', 'uncleaned.json']));
});
