import type { HomePart } from './home.ts';

/** A phone shows about this many lines before it becomes a scroll. */
export const MOST_LINES = 12;

export const heading = (text: string): HomePart => ({ kind: 'heading', text });
export const words = (text: string): HomePart => ({ kind: 'section', section: { kind: 'text', text } });
export const caution = (text: string): HomePart => ({ kind: 'caution', text });

/** The lines under an optional heading; what is too much is counted. */
export function lines(items: readonly string[], title?: string): HomePart {
  const rest = items.length - MOST_LINES;
  return {
    kind: 'section',
    section: {
      kind: 'list',
      ...(title === undefined ? {} : { heading: title }),
      items: rest > 0 ? [...items.slice(0, MOST_LINES), `and ${rest} more`] : items,
    },
  };
}
