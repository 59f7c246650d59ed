import { boreOf } from '../scenario/pipe-sizes.ts';
import type { SketchPipe } from './designFlow.ts';
import type { Draft } from './draft.ts';
import { FEED, FILTER } from './layout.ts';
import { feedSize } from './numbers-pump.ts';
import { tidy } from './units.ts';

const CHECK_VALVE = { yes: true, no: false, unknown: 'unknown' } as const;

const bore = (size: string): number => boreOf(size) ?? 0;

export const mainPipe = (site: Draft): SketchPipe => ({
  bore: bore(site.word('pipe.size')),
  length: site.number('pipe.length'),
  elbows: site.number('pipe.elbows'),
});

/** Main line, tee and feeds; the tee lies at the bottom inlet, where a failed check valve drains the least. */
export function plumbingPart(site: Draft): Record<string, unknown> {
  const checkValve = site.word('pipe.checkValve') as keyof typeof CHECK_VALVE;
  const feeds = site.word('feeds');
  const inlet = tidy(site.lip - FILTER.inlet);
  const outlet = tidy(site.lip + FILTER.outlet);
  return {
    main: {
      size: site.word('pipe.size'),
      length: site.figure('pipe.length'),
      fittings: { elbow90: site.number('pipe.elbows'), entrance: 1 },
      ...(checkValve !== 'no' && { k: site.number('checkValveLoss') }),
      checkValve: CHECK_VALVE[checkValve],
    },
    ...(feeds !== 'top' && { tee: inlet, bottomFeed: { ...feedPart(site, 'bottomValve'), inlet } }),
    ...(feeds !== 'bottom' && { topFeed: { ...feedPart(site, 'topValve'), outlet, to: 'filter' } }),
  };
}

function feedPart(site: Draft, valve: string): Record<string, unknown> {
  return {
    size: feedSize(bore(site.word('pipe.size'))),
    length: tidy(FEED.length),
    fittings: { elbow90: FEED.elbows },
    k: FEED.k,
    valve: site.figure(valve),
  };
}
