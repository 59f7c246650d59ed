/** A small picture for each number: a cut or a plan with the measured line inked. */
import type { Mark } from '../section/marks.ts';
import { FALLS_PICTURES } from './pictures-falls.ts';
import { POND_PICTURES } from './pictures-pond.ts';
import { WORKS_PICTURES } from './pictures-works.ts';

const PICTURES = { ...POND_PICTURES, ...WORKS_PICTURES, ...FALLS_PICTURES };

/** @param word the word in force, where the number is one; undefined where there is no such number */
export const pictureOf = (key: string, word?: string): readonly Mark[] | undefined => PICTURES[key]?.(word);
