/** What stands on the whole page, through every shadow root, as it is laid out. */
import type { Page } from '@playwright/test';

/** Places of the page that reach past the window, or scroll sideways, other than the strip, tables, a text of lines and a sheet of paper at its own size do. */
export const sideways = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const walk = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (
          element.matches('tb-section, textarea, pre, [role=status]') ||
          element.closest('svg, .rows, .room') ||
          !element.checkVisibility()
        )
          continue;
        const { right, left, width, height } = element.getBoundingClientRect();
        const name = `${element.localName}.${element.className} “${element.textContent?.trim().slice(0, 30)}”`;
        if (width > 1 && height > 1 && (right > innerWidth + 0.5 || left < -0.5)) found.push(`${name} to ${right}`);
        if (/auto|scroll/.test(getComputedStyle(element).overflowX) && element.scrollWidth > element.clientWidth)
          found.push(`${name} scrolls`);
        if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    const { scrollWidth } = document.documentElement;
    if (scrollWidth > innerWidth) found.push(`the page itself, ${scrollWidth} px wide`);
    walk(document);
    return found;
  });

/** Presses and fields that are shown but stand outside the window across, or under something else. */
export const unreachable = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const walk = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        // What lies under an open sheet is inert, and meant to be out of reach.
        if (element.shadowRoot && !element.inert) walk(element.shadowRoot);
        if (!element.matches('button, select, summary, input, a[href], [role=slider]')) continue;
        if (!element.checkVisibility({ visibilityProperty: true })) continue;
        element.scrollIntoView({ block: 'center' });
        const { left, top, width, height } = element.getBoundingClientRect();
        const [x, y] = [left + width / 2, top + height / 2];
        const hit = root.elementFromPoint(x, y);
        // What the sheet of sites lies over is reached when it is closed.
        const reached = hit !== null && (element.contains(hit) || hit.contains(element) || hit.closest('.sheet'));
        // What a modal dialog lies over is out of reach by design.
        if (hit?.shadowRoot?.querySelector('dialog:modal')) continue;
        if (!reached) found.push(`${element.outerHTML.slice(0, 120)} under ${hit?.outerHTML.slice(0, 80)}`);
      }
    };
    walk(document);
    scrollTo(0, 0);
    return found;
  });

/** Animations and transitions under way, in any shadow root. */
export const running = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const roots: (Document | ShadowRoot)[] = [document];
    for (const root of roots) {
      for (const { shadowRoot } of root.querySelectorAll('*')) if (shadowRoot) roots.push(shadowRoot);
    }
    return roots
      .flatMap((root) => root.getAnimations())
      .filter(({ playState }) => playState === 'running')
      .map(({ id, effect }) => `${id} on ${(effect as KeyframeEffect).target?.localName}`);
  });

/** Everything that can be read, figures of the drawing too. */
export const allText = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const read = (root: ShadowRoot | Element): string =>
      [...root.childNodes]
        .map((node) => {
          if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
          if (!(node instanceof Element) || node.localName === 'style') return '';
          return `${node.getAttribute('aria-label') ?? ''} ${read(node)} ${node.shadowRoot ? read(node.shadowRoot) : ''}`;
        })
        .join(' ');
    return read(document.body);
  });
