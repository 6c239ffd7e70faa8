import type { Answer, Section } from '../../chat/answer.ts';
import { harmless } from '../../chat/wrap.ts';
import { LIMITS } from '../limits.ts';
import { escaped } from '../text.ts';

/** Slack takes no message without text. */
const NO_WORDS = '…';

/**
 * An answer as the plain text of a notification and of screen readers, escaped and cut to what Slack advises. Rows are said
 * one after another, not laid out: read aloud, columns of spaces say nothing.
 */
export function fallbackText(answer: Answer): string {
  let words = answer.title;
  for (const text of parts(answer)) {
    words += `\n${text}`;
    // What is over is cut below; laying out a very long answer must cost nothing.
    if (words.length > LIMITS.fallbackText) break;
  }
  return escaped(harmless(words).trim(), LIMITS.fallbackText) || NO_WORDS;
}

function* parts({ sections, cautions, next }: Answer): Generator<string> {
  for (const section of sections) yield* sectionParts(section);
  for (const caution of cautions) yield `Caution: ${caution}`;
  if (next.length > 0) yield `Ask next: ${next.map((step) => `"${step.says}"`).join(', ')}`;
}

function* sectionParts(section: Section): Generator<string> {
  if (section.kind === 'text') return yield section.text;
  if (section.heading) yield section.heading;
  if (section.kind === 'table') {
    for (const [first = '', ...others] of section.rows) {
      const rest = others.filter((cell) => cell !== '').join(', ');
      yield rest === '' ? first : `${first}: ${rest}`;
    }
    return;
  }
  for (const [at, item] of section.items.entries())
    yield section.kind === 'steps' ? `${at + 1}. ${item}` : `- ${item}`;
}
