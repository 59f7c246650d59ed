/** The drawing as a file of its own, opened by itself in a browser. */
import type { SectionDrawing } from '../../web/section/section.ts';
import { looks } from '../../web/state/look.ts';
import { expect, test } from './fixture.ts';

for (const look of [...looks, 'the reader’s own colors'] as const) {
  test(`the file of the drawing stands alone: ${look}`, async ({ browser }) => {
    const own = look === 'the reader’s own colors';
    const page = await browser.newPage(own ? { forcedColors: 'active' } : {});
    if (!own) await page.addInitScript((kept) => localStorage.setItem('tumblebay look', kept), look);
    await page.goto('./#courtyard');
    const drawing = page.locator('tb-section');
    await expect(drawing.locator('.part').first()).toBeAttached();
    await page.evaluate(() => document.fonts.ready);
    const { text, paper, count } = await drawing.evaluate((element: SectionDrawing) => ({
      text: element.svgText(),
      paper: getComputedStyle(element).getPropertyValue('--paper').trim(),
      count: element.shadowRoot!.querySelectorAll('.layers path, .layers text').length,
    }));
    await page.close();
    expect(text).not.toMatch(/var\(|calc\(|NaN|undefined|https?:(?!\/\/www\.w3\.org\/2000\/svg)/);

    const file = await browser.newPage();
    await file.goto(`data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`);
    const found = await file.evaluate(() => {
      const root = document.documentElement;
      const fillOf = (name: string): string => getComputedStyle(document.querySelector(name)!).fill;
      return {
        name: root.localName,
        broken: document.querySelectorAll('parsererror').length,
        title: document.querySelector('title')!.textContent,
        said: document.querySelector('desc')!.textContent,
        ground: fillOf('.paper'),
        water: fillOf('.w2'),
        fonts: getComputedStyle(document.querySelector('text')!).fontFamily,
        marks: document.querySelectorAll('path:not(clipPath path):not(.paper), text').length,
      };
    });
    await file.close();
    expect(found).toMatchObject({ name: 'svg', broken: 0, title: 'Courtyard spring' });
    expect(found.said).toMatch(/^pond, water at −\d+ mm; .*as tall as lengths/);
    expect(found.fonts).toMatch(/STIX Two Text.*Georgia, serif/);
    expect(found.marks).toBe(count);
    const hex = own ? '#f5f0e5' : paper.replace(/^#(.)(.)(.)$/, '#$1$1$2$2$3$3');
    const rgb = `rgb(${[1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)).join(', ')})`;
    expect(found.ground).toBe(rgb);
    // In black and white depths are lines on the paper's own color.
    if (own || look === 'stark') expect(found.water).toBe(rgb);
    else expect(found.water).not.toBe(rgb);
  });
}
