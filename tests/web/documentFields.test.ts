import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import { jsonSchema } from '../../sim/scenario/schema.ts';
import { expandSketch } from '../../sim/sketch/expand.ts';
import { valueAt, withValueAt, withValuesAt } from '../../sim/studies/place.ts';
import { fieldsOf, sampleFor } from '../../web/state/fields.ts';
import { partAt, partsOfFile } from '../../web/state/part-names.ts';

const schema = jsonSchema();
const folder = new URL('../../scenarios/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const fileOf = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

/** Places of all plain values of a file. */
function leaves(value: unknown, place = ''): string[] {
  if (typeof value !== 'object' || value === null) return [place];
  return Object.entries(value).flatMap(([key, inner]) => {
    if (Array.isArray(value)) return leaves(inner, `${place}[${key}]`);
    const word = /^[A-Za-z_]\w*$/.test(key);
    return leaves(inner, word ? (place ? `${place}.${key}` : key) : `${place}["${key}"]`);
  });
}

describe.each(names)('the parts of %s', (name) => {
  // Of a sketch the parts show what it comes to; its own numbers are asked where a site is made one’s own.
  const file = expandSketch(fileOf(name), { listed: false }).file;
  const rows = partsOfFile(file).flatMap(({ place }) => fieldsOf(schema, file, place).rows);

  test('show every value of the file in a field, once', () => {
    const shown = rows
      .filter(({ kind }) => kind !== 'heading')
      .flatMap(({ kind, place }) => (kind === 'pair' ? [`${place}[0]`, `${place}[1]`] : [place]));
    expect([...shown].sort()).toEqual(leaves(file).sort());
  });

  test('show it as it was typed', () => {
    for (const row of rows) expect(row.value).toBe(valueAt(file, row.place));
  });
});

describe('the fields of a part', () => {
  const file = fileOf('courtyard.json');

  test('know the words a key may have, and what it is', () => {
    const { rows } = fieldsOf(schema, file, 'pond');
    const plan = rows.find(({ place }) => place === 'pond.shape.plan')!;
    expect(plan).toMatchObject({ kind: 'words', options: ['rectangle', 'ellipse', 'freeform'], optional: true });
    expect(rows.find(({ place }) => place === 'pond.fillMark')!.about).toContain('where the crew means to keep it');
    expect(rows.find(({ place }) => place === 'pond.rim')!.optional).toBe(false);
  });

  test('offer the keys that are not there', () => {
    const { missing } = fieldsOf(schema, file, 'pond');
    expect(missing.map((each) => each.name)).toEqual(expect.arrayContaining(['overflow', 'runoff', 'leak', 'level']));
    expect(missing.map((each) => each.name)).not.toContain('fill mark');
  });

  test('offer what may stand deeper by the name of what it belongs to', () => {
    const { missing } = fieldsOf(schema, file, 'filter');
    expect(missing.find(({ name }) => name === 'coarse mat: settled in it now')).toEqual({
      place: 'filter.media.layers[0].deposit',
      name: 'coarse mat: settled in it now',
      about: 'what has settled in it at t = 0 (m3)',
    });
    const names = fieldsOf(schema, file, 'actions').missing.map(({ name }) => name);
    for (const name of names) expect(name).toMatch(/^\d+: /);
    // What stands as a part of its own offers its keys there.
    expect(fieldsOf(schema, file, 'watercourse[0]').missing.some(({ place }) => place.includes('stones'))).toBe(false);
    expect(fieldsOf(schema, file, '').missing.some(({ place }) => place.startsWith('pond.'))).toBe(false);
  });

  test('name what a pump and a layer may have besides in plain words, and take it in the trade’s units', () => {
    const named = (place: string): string | undefined =>
      fieldsOf(schema, withValueAt(file, place, 1), place.replace(/\..*/, '')).rows.find((row) => row.place === place)
        ?.name;
    expect(named('pump.speed')).toBe('share of its full speed');
    expect(named('filter.media.layers[0].deposit')).toBe('settled in it now');
    const set = withValuesAt(file, [
      ['pump.speed', '90 %'],
      ['filter.media.layers[0].deposit', '1.5 L'],
    ]);
    expect(readSite(set)).toMatchObject({
      ok: true,
      scenario: { pump: { speed: 0.9 }, filter: { media: { layers: [{ deposit: 0.0015 }, {}] } } },
    });
  });

  test('start a key that is added with a value of its kind', () => {
    expect(sampleFor(schema, file, 'pond.overflow')).toEqual({ elevation: 0, diameter: 0 });
    expect(sampleFor(schema, file, 'watercourse[0].stones[0].crest[3]')).toEqual([0, 0]);
    const added = withValueAt(file, 'pond.plantCover', sampleFor(schema, file, 'pond.plantCover'));
    expect(readSite(added)).toMatchObject({ ok: true });
  });

  test('take an alternative by what stands there', () => {
    const box = withValueAt(file, 'pump.curve', { flow: '200 L/min', head: '5 m' });
    expect(fieldsOf(schema, box, 'pump').rows.map(({ place }) => place)).toContain('pump.curve.flow');
    expect(fieldsOf(schema, file, 'pump').rows.map(({ place }) => place)).toContain('pump.curve[0]');
  });
});

test('a pressed place opens the part it belongs to', () => {
  const file = fileOf('courtyard.json');
  expect(partAt(file, 'plumbing.main.checkValve').name).toBe('main line');
  expect(partAt(file, 'watercourse[0].stones[1]').name).toBe('corner stone');
  expect(partAt(file, 'pond.overflow').name).toBe('pond');
  expect(partAt(file, 'nowhere').name).toBe('the run');
});
