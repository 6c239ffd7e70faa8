/**
 * Names of entries in the calendars we write. They follow from the game, so that a calendar read in twice moves its
 * entries, and so that our own file, read back, is known for what it is.
 */
export const gameUid = (gameId: string): string => `game-${gameId}@batchbell`;
export const prepUid = (gameId: string): string => `prep-${gameId}@batchbell`;
export const packUid = (gameId: string): string => `pack-${gameId}@batchbell`;

/** Prep and packing are worked out from games; in a calendar read back they are no games. */
export const isOwnWork = (uid: string): boolean => /^(?:prep|pack)-.*@batchbell$/.test(uid);

/** The id of the game that an entry of ours stands for. */
export const ownGameId = (uid: string): string | undefined => /^game-(.+)@batchbell$/.exec(uid)?.[1];
