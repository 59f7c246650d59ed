import { html, nothing, type TemplateResult } from 'lit';
import { type Display, formatFlow } from '../../sim/quantity/index.ts';
import type { FileEdits } from '../engine/protocol.ts';
import { type Blanks, row, taken } from './blanks.ts';
import { bucketEdits, formEdits, type HoseRow, hoseEdits, lessEdits } from './edits.ts';
import { fileText, shownFigure, typedFigure } from './typed-figure.ts';

export interface HoseDeeds {
  readonly put: (edits: FileEdits, label: string) => void;
  /** A bucket's volume was typed: it stays for the seconds. */
  readonly bucket: (hose: number, volume: number) => void;
}

interface HoseSeen {
  readonly row: HoseRow;
  readonly file: unknown;
  readonly display: Display;
  readonly several: boolean;
  readonly blanks: Blanks;
}

const more =
  (what: string) =>
  (value: number): string | undefined =>
    value > 0 ? undefined : `${what} is more than nothing.`;

/** What somebody knows of one hose: a bucket and a watch, or the pressure at the tap; its meter, and its load. */
export function hoseView(seen: HoseSeen, deeds: HoseDeeds): TemplateResult {
  const { several, file, display } = seen;
  const hose = seen.row;
  const { name, flow, by } = hose.hose;
  const other = hose.form === 'bucket' ? 'pressure' : 'bucket';
  const words = other === 'bucket' ? 'a bucket test instead' : 'pressure at the tap instead';
  const gives = `${by === 'pressure' ? 'at most ' : ''}${formatFlow(flow, display)}`;
  return html`<fieldset>
    <legend>${several ? `‘${name}’: ${gives}` : `The hose gives ${gives}.`}</legend>
    ${hose.form === 'bucket' ? bucketView(seen, deeds) : pressureView(seen, deeds)}
    <details>
      <summary>its meter, its load, its pressure</summary>
    ${figureRow(seen, deeds, 'meter', 'meter reads now', display === 'us' ? 'gal' : 'm3')}
    ${figureRow(seen, deeds, 'volume', 'all it can give', display === 'us' ? 'gal' : 'm3')}
    <div class="presses">
      <button @click=${() => deeds.put(formEdits(hose, file, other, display), `${name} by ${other}`)}>${words}</button>
      ${several ? html`<button @click=${() => deeds.put(lessEdits(hose), `${name} taken away`)}>take ‘${name}’ away</button>` : nothing}
    </div>
    </details>
  </fieldset>`;
}

function bucketView({ row: hose, file, display, blanks }: HoseSeen, deeds: HoseDeeds): TemplateResult {
  const { i, bucket, seconds } = hose;
  const [volumeKey, secondsKey] = [`bucket ${i}`, `seconds ${i}`];
  const put = (volume: number, time: number): void =>
    deeds.put(bucketEdits(hose, file, volume, time, display), `bucket test of ${hose.hose.name}`);
  const volume = blanks.field({
    key: volumeKey,
    label: `bucket of ${hose.hose.name}`,
    stands: shownFigure(bucket, 'volume', display),
    wide: 7,
    take: (text) =>
      taken(
        typedFigure(text, 'volume', display),
        (value) => {
          if (value === undefined) return;
          deeds.bucket(i, value);
          if (seconds > 0) put(value, seconds);
        },
        more('What a bucket holds'),
      ),
  });
  const time = blanks.field({
    key: secondsKey,
    label: `seconds to fill the bucket of ${hose.hose.name}`,
    stands: seconds > 0 ? shownFigure(seconds, 'time', display) : '',
    wide: 7,
    take: (text) =>
      taken(typedFigure(text, 'time', display), (value) => value !== undefined && put(bucket, value), more('The time')),
  });
  return row('bucket test', html`${volume} in ${time}`, blanks.says(volumeKey, secondsKey));
}

const PRESSED = [
  ['pressure', 'pressure at the tap', 'pressure'],
  ['length', 'length of the hose', 'length'],
  ['bore', 'its bore', 'length'],
] as const;

function pressureView({ row: hose, display, blanks }: HoseSeen, deeds: HoseDeeds): TemplateResult {
  const units: Record<string, string | undefined> = { length: display === 'us' ? 'ft' : 'm' };
  return html`${PRESSED.map(([key, name, dimension]) => {
    const id = `${key} ${hose.i}`;
    const field = blanks.field({
      key: id,
      label: `${name}, ${hose.hose.name}`,
      stands: shownFigure(hose.pressed?.[key] ?? 0, dimension, display, units[key]),
      wide: 9,
      take: (text) =>
        taken(
          typedFigure(text, dimension, display, units[key]),
          (value) => {
            if (value === undefined) return;
            deeds.put(hoseEdits(hose, key, fileText(value, dimension, display, units[key])), `${name} typed`);
          },
          more('It'),
        ),
    });
    return row(name, field, blanks.says(id));
  })}<p class="note">A pressure read with the tap shut promises too much: a bucket test is better.</p>`;
}

/** A volume that may be left out. */
function figureRow(
  { row: hose, display, blanks }: HoseSeen,
  deeds: HoseDeeds,
  key: 'meter' | 'volume',
  name: string,
  unit: string,
): TemplateResult {
  const id = `${key} ${hose.i}`;
  const value = hose.hose[key];
  const field = blanks.field({
    key: id,
    label: `${name}, ${hose.hose.name}`,
    stands: value === undefined ? '' : shownFigure(value, 'volume', display, unit),
    wide: 11,
    take: (text) =>
      taken(typedFigure(text, 'volume', display, unit), (to) =>
        deeds.put(
          hoseEdits(hose, key, to === undefined ? undefined : fileText(to, 'volume', display, unit)),
          `${name} typed`,
        ),
      ),
  });
  return row(name, field, blanks.says(id));
}
