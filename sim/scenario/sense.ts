import type { Tell } from './fields.ts';
import type { PartlyFile } from './schema.ts';

export function tellSense(_file: PartlyFile, _tell: Tell): void {}
