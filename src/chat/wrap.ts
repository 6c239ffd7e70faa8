import { displayWidth, glyphsOf } from './display-width.ts';

/** Characters that steer a terminal or turn reading order around; people's text must not carry them to a screen. */
const STEERING =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;

/**
 * Text that is harmless on a screen: steering characters gone, tabs are spaces, line ends kept.
 * @example harmless('a\u001b[31mb') // 'a[31mb'
 */
export function harmless(text: string): string {
  return text.replaceAll('\t', ' ').replaceAll('\r\n', '\n').replace(STEERING, '');
}

/**
 * Breaks text into lines of at most `width` columns, at spaces where it can; `indent` starts the lines after the first.
 * @example wrap('one two three', 8) // ['one two', 'three']
 */
export function wrap(text: string, width: number, indent = ''): string[] {
  return text.split('\n').flatMap((line) => wrapLine(line, width, indent));
}

function wrapLine(line: string, width: number, indent: string): string[] {
  if (displayWidth(line) <= width) return [line];
  const lines: string[] = [];
  let current = '';
  for (const word of line.split(/(?<= )/).flatMap((part) => pieces(part, width - displayWidth(indent)))) {
    if (displayWidth((current + word).trimEnd()) > width) {
      lines.push(current.trimEnd());
      current = indent;
    }
    current += word;
  }
  lines.push(current.trimEnd());
  return lines;
}

/** A word longer than a whole line is cut between glyphs. */
function pieces(word: string, width: number): string[] {
  if (displayWidth(word.trimEnd()) <= width) return [word];
  const cut: string[] = [''];
  for (const glyph of glyphsOf(word)) {
    const last = cut.at(-1) ?? '';
    if (displayWidth(last + glyph) > Math.max(width, 2)) cut.push(glyph);
    else cut[cut.length - 1] = last + glyph;
  }
  return cut;
}
