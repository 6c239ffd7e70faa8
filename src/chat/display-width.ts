/** Wide or full-width in Unicode's East Asian Width (UAX 11), by block; emoji are seen through their own property. */
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]/u;
const EMOJI = /\p{Emoji_Presentation}|\p{Extended_Pictographic}\ufe0f|[0-9#*]\ufe0f\u20e3/u;
const ZERO = /^[\p{Mark}\p{Default_Ignorable_Code_Point}]+$/u;
/** Latin letters, fractions and everyday punctuation: one column each, seen without loading the segmenter. */
const PLAIN = /^[\x20-\x7e\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2030-\u205e\u2150-\u215f\u2212]*$/;

/** True for text whose width is its length. */
export const isPlain = (text: string): boolean => PLAIN.test(text);

let segmenter: Intl.Segmenter | undefined;

/** What a reader sees as single characters: "é", a flag, a family emoji are one each. */
export function glyphsOf(text: string): string[] {
  if (PLAIN.test(text)) return [...text];
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), (part) => part.segment);
}

/**
 * Terminal columns a text takes; control characters are expected to be gone.
 * @example displayWidth('½ 杯') // 4
 */
export function displayWidth(text: string): number {
  if (PLAIN.test(text)) return text.length;
  return glyphsOf(text).reduce((sum, glyph) => sum + glyphWidth(glyph), 0);
}

function glyphWidth(glyph: string): number {
  if (ZERO.test(glyph)) return 0;
  return WIDE.test(glyph) || EMOJI.test(glyph) ? 2 : 1;
}
