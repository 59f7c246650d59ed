import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fileSchema } from '../../sim/scenario/schema.ts';

type Node = { [key: string]: unknown };
const kept = JSON.parse(
  readFileSync(new URL('../../sim/scenario/scenario.schema.json', import.meta.url), 'utf8'),
) as Node;

const nodesOf = (node: unknown): Node[] =>
  typeof node === 'object' && node !== null ? [node as Node, ...Object.values(node).flatMap(nodesOf)] : [];

describe('the kept JSON Schema', () => {
  test('is what the definition of the file generates', () => {
    expect(kept).toEqual(JSON.parse(JSON.stringify(fileSchema())));
  });

  test('lets no unknown key into any object', () => {
    const objects = nodesOf(kept).filter((node) => node['type'] === 'object');
    expect(objects.length).toBeGreaterThan(30);
    expect(objects.filter((node) => node['additionalProperties'] !== false)).toEqual([]);
  });

  test('refers only to definitions that it has', () => {
    const names = nodesOf(kept).flatMap((node) => (typeof node['$ref'] === 'string' ? [node['$ref']] : []));
    const known = Object.keys(kept['$defs'] as Node).map((name) => `#/$defs/${name}`);
    expect([...new Set(names)].sort()).toEqual(known.sort());
  });
});
