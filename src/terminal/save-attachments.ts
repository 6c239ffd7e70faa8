import { writeFile } from 'node:fs/promises';
import { extname } from 'node:path';
import type { Answer, Attachment } from '../chat/answer.ts';

/** Files that are of use only as files; a label is read on the screen. */
const SAVED = new Set(['text/calendar', 'text/csv']);
export const isSaved = ({ mediaType }: Attachment): boolean => SAVED.has(mediaType);

const MOST_TRIES = 100;

/**
 * Saves the calendars and tables of an answer in the current folder and says where, one line each. A file that is
 * there is never written over: the next free name is used.
 */
export async function saveAttachments(answer: Answer | undefined): Promise<string[]> {
  const saved: string[] = [];
  for (const file of answer?.attachments ?? []) {
    if (isSaved(file)) saved.push(await save(file));
  }
  return saved;
}

async function save({ fileName, content }: Attachment): Promise<string> {
  const extension = extname(fileName);
  const base = fileName.slice(0, fileName.length - extension.length);
  for (let number = 1; number <= MOST_TRIES; number++) {
    const name = number === 1 ? fileName : `${base}-${number}${extension}`;
    try {
      await writeFile(name, content, { flag: 'wx' });
      return `Saved in this folder: ${name}`;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EEXIST') return `${name} could not be saved here (${code ?? 'unknown'}).`;
    }
  }
  return `${fileName} could not be saved: there are too many of that name here.`;
}
