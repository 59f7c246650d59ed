/** What is seldom pressed or told of the keeping of sites is fetched beside the first answer. */
import type { Keeper } from '../keep/keeper.ts';

export type Room = Pick<typeof import('../keep/deeds.ts'), 'openFile' | 'share'> &
  Pick<typeof import('../keep/sheet.ts'), 'sheetView'> &
  Pick<typeof import('../keep/told.ts'), 'newsView'>;

/** Undefined where it cannot be fetched: the page then computes, and keeps, all the same. */
export async function room(keeper: Keeper): Promise<Room | undefined> {
  try {
    const { watchVersions, ...rest } = await import('../keep/room.ts');
    watchVersions(keeper);
    return rest;
  } catch {
    return undefined;
  }
}
