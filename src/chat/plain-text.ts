import type { Answer, Section } from './answer.ts';
import { tableLines } from './text-table.ts';
import { harmless, wrap } from './wrap.ts';

/** One line of a drawn answer and what it is, so that a surface may color it. */
export interface TextLine {
  readonly part: 'title' | 'heading' | 'body' | 'caution' | 'next';
  readonly text: string;
}

/** Narrower than this nothing can be laid out; longer lines are then left to the screen. */
const NARROWEST = 20;

/**
 * An answer as plain text, no line wider than `width` columns (at least 20). What matters is said in words, never by color:
 * cautions start with "Caution:", follow-ups with "Ask next:".
 * @example plainText(answer, 80)
 */
export function plainText(answer: Answer, width = 80): string {
  return textLines(answer, width)
    .map((line) => line.text)
    .join('\n');
}

/** The lines of `plainText`, each with its part. */
export function textLines(answer: Answer, width = 80): TextLine[] {
  const columns = Math.max(NARROWEST, Math.floor(width));
  const lines: TextLine[] = as('title', wrap(harmless(answer.title), columns));
  for (const section of answer.sections) {
    lines.push({ part: 'body', text: '' }, ...sectionLines(section, columns));
  }
  if (answer.cautions.length > 0) lines.push({ part: 'body', text: '' });
  for (const caution of answer.cautions) {
    lines.push(...as('caution', wrap(`Caution: ${harmless(caution)}`, columns, '  ')));
  }
  if (answer.next.length > 0) {
    const says = answer.next.map((step) => `"${harmless(step.says)}"`).join(', ');
    lines.push({ part: 'body', text: '' }, ...as('next', wrap(`Ask next: ${says}`, columns, '  ')));
  }
  return lines;
}

const as = (part: TextLine['part'], texts: readonly string[]): TextLine[] =>
  texts.map((text) => ({ part, text }));

function sectionLines(section: Section, width: number): TextLine[] {
  if (section.kind === 'text') return as('body', wrap(harmless(section.text), width));
  const heading = section.heading ? as('heading', wrap(harmless(section.heading), width)) : [];
  return [...heading, ...as('body', bodyLines(section, width))];
}

function bodyLines(section: Exclude<Section, { kind: 'text' }>, width: number): string[] {
  if (section.kind === 'table') {
    const rows = section.rows.map((row) => row.map(oneLine));
    return tableLines(section.columns, rows, width);
  }
  return section.items.flatMap((item, at) => {
    const mark = section.kind === 'steps' ? `${at + 1}. ` : '- ';
    return wrap(mark + oneLine(item), width, ' '.repeat(mark.length));
  });
}

const oneLine = (text: string): string => harmless(text).replaceAll('\n', ' ');
