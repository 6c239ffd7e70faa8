import { Problem } from './nutrition/problem.ts';

/** What a file is for, in words a person gets when it cannot be read. */
export interface FileKind {
  /** Plural: "calendars". */
  readonly name: string;
  readonly mostBytes: number;
  readonly whenTooBig: string;
  readonly whichPath: string;
}

/**
 * Reads a file of this machine.
 * @throws Problem `not_found` or `bad_file` that says what to give instead.
 */
export async function openFile(path: string, kind: FileKind): Promise<Uint8Array> {
  const { readFile, stat } = await import('node:fs/promises');
  try {
    const { size } = await stat(path);
    if (size > kind.mostBytes) {
      throw new Problem(
        'bad_file',
        `${path} is ${(size / 1024 / 1024).toFixed(1)} MB; I read ${kind.name} up to ${kind.mostBytes / 1024 / 1024} MB.`,
        kind.whenTooBig,
      );
    }
    return await readFile(path);
  } catch (error) {
    if (error instanceof Problem) throw error;
    const { code } = error as NodeJS.ErrnoException;
    throw new Problem(
      code === 'ENOENT' ? 'not_found' : 'bad_file',
      code === 'ENOENT' ? `There is no file ${path} here.` : `${path} cannot be read.`,
      kind.whichPath,
    );
  }
}
