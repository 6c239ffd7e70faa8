import type { Answer, Section } from '../../chat/answer.ts';
import { plainText } from '../../chat/plain-text.ts';
import { LIMITS } from '../limits.ts';
import { cut, escaped } from '../text.ts';
import { leading } from './section.ts';

/** Wide enough that few lines are broken where the text is read aloud. */
const COLUMNS = 100;
/** Slack takes no message without text. */
const NO_WORDS = '…';

/** An answer as the plain text of a notification and of screen readers, escaped and cut to what Slack advises. */
export function fallbackText(answer: Answer): string {
  const sections = answer.sections.map(shortened);
  const title = cut(answer.title, LIMITS.item);
  const words = plainText({ ...answer, title, sections, attachments: [] }, COLUMNS).trim();
  return escaped(words, LIMITS.fallbackText) || NO_WORDS;
}

/** Only as much of a section as can be shown, so that laying out a very long one costs nothing. */
function shortened(section: Section): Section {
  if (section.kind === 'text') return { ...section, text: cut(section.text, LIMITS.textElement) };
  if (section.kind === 'table') {
    const rows = section.rows.map((row) => row.map((cell) => cut(cell, LIMITS.item)));
    const count = leading(
      rows.map((row) => row.join('').length),
      LIMITS.fallbackText,
    );
    return { ...section, rows: rows.slice(0, count) };
  }
  const items = section.items.map((item) => cut(item, LIMITS.item));
  const count = leading(
    items.map((item) => item.length),
    LIMITS.fallbackText,
  );
  return { ...section, items: items.slice(0, count) };
}
