import { makeCrest } from '../laws/crest.ts';
import type { BasinParts, Intake } from '../scenario/scenario.ts';
import type { Builder } from './builder.ts';

/** The chamber of the pump. */
export function addVault(b: Builder, vault: BasinParts): number {
  return b.fromParts('vault', vault, undefined);
}

/**
 * The ways between pond and vault: the intake's lip, narrowed by leaves on its screen, and the spill over the
 * chamber's top, which leaves do not touch and by which water gets out again against a blinded screen.
 */
export function joinVault(b: Builder, vault: number, pond: number, intake: Intake, top: number): void {
  const level = (z: number): [number, number][] => [
    [0, z],
    [intake.width, z],
  ];
  b.crest('intake', pond, vault, makeCrest(level(intake.elevation), 1), 1 - intake.blockage);
  b.crest('vault spill', pond, vault, makeCrest(level(top), 1));
}
