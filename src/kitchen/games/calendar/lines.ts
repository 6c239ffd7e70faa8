import { Problem } from '../../../nutrition/problem.ts';
import { MOST_BYTES } from './limits.ts';

/** One content line of a calendar, unfolded, with the number of the line in the file where it begins. */
export interface CalendarLine {
  readonly text: string;
  readonly line: number;
}

const utf8 = new TextDecoder('utf-8', { fatal: true });

/**
 * What Windows-1252 has at 0x80 to 0x9F (WHATWG Encoding Standard, index-windows-1252); the rest is Latin-1. Written
 * out because some versions of Node decode that label as plain Latin-1.
 */
const WINDOWS_1252 = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ';

/**
 * The content lines of a calendar file, made readable before the parser sees them: any kind of line end (CRLF, CR CR
 * LF, LF, CR), folds by space or tab (also in the middle of a UTF-8 character, RFC 5545 §3.1), a byte order mark,
 * UTF-16, and lines in Windows-1252.
 * @throws Problem `bad_file` for what is no calendar: empty, too large, HTML, an archive.
 */
export function calendarLines(bytes: Uint8Array): CalendarLine[] {
  if (bytes.length > MOST_BYTES) throw tooLarge(bytes.length);
  const raw = rawText(bytes);
  refuseOtherFiles(raw);
  const lines: CalendarLine[] = [];
  let text: string | undefined;
  let start = 0;
  let number = 0;
  for (const physical of raw.split(/\r+\n|\n|\r/)) {
    number += 1;
    if (text !== undefined && /^[ \t]/.test(physical)) {
      text += physical.slice(1);
      continue;
    }
    if (text !== undefined) lines.push({ text: decoded(text), line: start });
    text = physical.trim() === '' ? undefined : physical;
    start = number;
  }
  if (text !== undefined) lines.push({ text: decoded(text), line: start });
  return lines;
}

/** Bytes as a string of code points 0 to 255, so that lines can be unfolded before they are decoded. */
function rawText(bytes: Uint8Array): string {
  const utf16 = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff;
  const plain = utf16
    ? new TextEncoder().encode(new TextDecoder(utf16 === true ? 'utf-16be' : utf16).decode(bytes))
    : bytes;
  return Buffer.from(plain)
    .toString('latin1')
    .replace(/^\xef\xbb\xbf/, '');
}

/** A line is UTF-8 when it can be; else what older programs write. */
function decoded(line: string): string {
  if (!/[\x80-\xff]/.test(line)) return line;
  const bytes = Buffer.from(line, 'latin1');
  try {
    return utf8.decode(bytes);
  } catch {
    return line.replace(/[\x80-\x9f]/g, (byte) => WINDOWS_1252[byte.charCodeAt(0) - 0x80] ?? byte);
  }
}

function tooLarge(size: number): Problem {
  return new Problem(
    'bad_file',
    `This calendar is ${(size / 1024 / 1024).toFixed(1)} MB; I read at most ${MOST_BYTES / 1024 / 1024} MB.`,
    'Export one season or one sport at a time.',
  );
}

function refuseOtherFiles(raw: string): void {
  if (raw.trim() === '') {
    throw new Problem('bad_file', 'This calendar is empty.', 'Export it again as an .ics file.');
  }
  if (/^BEGIN:VCALENDAR/im.test(raw)) return;
  const head = raw.trimStart().slice(0, 500);
  if (/^<|<html|<!doctype/i.test(head)) {
    throw new Problem(
      'bad_file',
      'This is a web page, not a calendar.',
      'Use the address behind "subscribe" or "export": it ends in .ics or begins with webcal://.',
    );
  }
  throw new Problem(
    'bad_file',
    'This is not a calendar: it has no BEGIN:VCALENDAR.',
    'Export the schedule as an .ics (iCalendar) file.',
  );
}
