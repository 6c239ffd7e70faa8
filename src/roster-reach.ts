import { openFile } from './open-file.ts';

/** Opens a roster of this machine; given to a kitchen at the terminal only, like calendar files. */
export async function openRosterFile(path: string): Promise<Uint8Array> {
  const { MOST_BYTES } = await import('./kitchen/roster/limits.ts');
  return openFile(path, {
    name: 'rosters',
    mostBytes: MOST_BYTES,
    whenTooBig: 'Give one line a person, and only the people the kitchen feeds.',
    whichPath: 'Give the path of a .csv file from the folder you started in: import roster.csv',
  });
}
