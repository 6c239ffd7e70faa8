import { displayWidth, glyphsOf, isPlain } from './display-width.ts';

/** Characters that steer a terminal or turn reading order around; people's text must not carry them to a screen. */
const STEERING =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;
/** What `harmless` would change; most texts hold none of it. */
const NOT_HARMLESS =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/;

/**
 * Text that is harmless on a screen: steering characters gone, tabs are spaces, line ends kept.
 * @example harmless('a\u001b[31mb') // 'a[31mb'
 */
export function harmless(text: string): string {
  if (!NOT_HARMLESS.test(text)) return text;
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
  const widthOf = isPlain(line) && isPlain(indent) ? lengthOf : displayWidth;
  if (widthOf(line) <= width) return [line];
  const lines: string[] = [];
  let current = '';
  for (const word of line.split(/(?<= )/).flatMap((part) => pieces(part, width - widthOf(indent), widthOf))) {
    if (widthOf((current + word).trimEnd()) > width) {
      lines.push(current.trimEnd());
      current = indent;
    }
    current += word;
  }
  lines.push(current.trimEnd());
  return lines;
}

const lengthOf = (text: string): number => text.length;

/** A word longer than a whole line is cut between glyphs. */
function pieces(word: string, width: number, widthOf: (text: string) => number): string[] {
  if (widthOf(word.trimEnd()) <= width) return [word];
  const cut: string[] = [''];
  for (const glyph of glyphsOf(word)) {
    const last = cut.at(-1) ?? '';
    if (widthOf(last + glyph) > Math.max(width, 2)) cut.push(glyph);
    else cut[cut.length - 1] = last + glyph;
  }
  return cut;
}
