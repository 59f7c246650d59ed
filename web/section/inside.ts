import type { CSSResult, nothing, SVGTemplateResult } from 'lit';
import type { Moment } from '../state/moment.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** What is drawn within a close-up while the page is alive, in place of marks that stand. */
export interface Inside {
  readonly styles: CSSResult;
  layer(scene: Scene, scale: Scale, moment: Moment): SVGTemplateResult | typeof nothing;
}

/** Brings its looks into an element, once. */
export function adoptLooks(root: ShadowRoot, { styles: { styleSheet } }: Inside): void {
  if (styleSheet && !root.adoptedStyleSheets.includes(styleSheet)) root.adoptedStyleSheets.push(styleSheet);
}
