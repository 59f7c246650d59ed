import { isObject } from '../scenario/fields.ts';
import { time } from '../scenario/keys/common.ts';
import type { Draft } from './draft.ts';
import { AUTOFILL_BAND, DAY } from './layout.ts';
import { evaporationIn } from './numbers-use.ts';
import { displayOf } from './shown.ts';
import { tidy } from './units.ts';

/** How the site is used: its weather and water supply, and a day on which the pump stands for an hour at noon. */
export function useParts(site: Draft, sketch: unknown): Record<string, unknown> {
  const { mark } = site.pond;
  const autofill = site.word('autofill');
  return {
    display: displayOf(sketch),
    starts: DAY.starts,
    span: DAY.span,
    weather: { evaporation: tidy(evaporationIn(site.value('climate') as number | string)) },
    supply: {
      ...(!Array.isArray(hoseOf(site)) && { hose: { flow: hoseFlow(site) } }),
      ...(autofill !== 'none' && {
        autofill: {
          flow: site.figure('autofillFlow'),
          set: tidy(mark),
          low: tidy(mark - AUTOFILL_BAND),
          in: autofill,
        },
      }),
    },
    actions: actions(site),
  };
}

function hoseOf({ beside }: Draft): unknown {
  const { supply } = beside;
  return isObject(supply) ? supply['hose'] : undefined;
}

function hoseFlow(site: Draft): unknown {
  const bucket = site.value('bucket');
  if (typeof bucket === 'number') return site.raw('bucket') ?? bucket;
  const [volume, seconds] = bucket as readonly [number, number];
  return tidy(volume / seconds);
}

/** In a span too short for noon the pump stops and starts at the same shares of it. */
function actions({ beside }: Draft): unknown[] {
  const span = beside['span'] === undefined ? DAY.span : (time.read(beside['span'], '', () => {}) ?? DAY.span);
  const share = span >= DAY.start ? 1 : span / DAY.span;
  return [
    { at: tidy(DAY.stop * share), do: 'pump', to: 'off' },
    { at: tidy(DAY.start * share), do: 'pump', to: 'on' },
  ];
}
