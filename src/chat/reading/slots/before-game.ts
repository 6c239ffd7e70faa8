import type { Slots } from '../../slots.ts';

/** Up to three words between "before" and the game: "the", "every", an opponent, a day. Words of a task end it. */
const WORDS =
  "(?:(?!(?:to|and|for|of|with|from|we|they|i|you|get|leaves?)\\b)[\\p{L}\\p{N}.&-]+(?:['’]s)?\\s+){0,4}?";
/** "before the Mill Bay game", "before kickoff". */
export const BEFORE_GAME = `before\\s+${WORDS}(?:games?|match(?:es)?|meets?|kick-?off|tip-?off)\\b`;
const NAMED = new RegExp(`\\b${BEFORE_GAME}`, 'iu');
const NO_NAME =
  /^(?:the|an?|our|next|each|every|any|this|that|games?|match(?:es)?|meets?|kick-?off|tip-?off)$/i;

/** Which game "2 hours before the Mill Bay game" is about, when it was said. */
export function gameNamed(text: string): Slots {
  const said = NAMED.exec(text)?.[0];
  if (said === undefined) return {};
  const words = said.split(/\s+/).slice(1, -1);
  const name = words.filter((word) => !NO_NAME.test(word)).join(' ');
  return name === '' ? {} : { before_game: name.toLowerCase() };
}

const LEAD = new RegExp(`(?<![\\d.,/])(\\d+(?:\\.\\d+)?)\\s*(min|h|d)[a-z]*\\s+${BEFORE_GAME}`, 'iu');
const UNIT_MIN = { min: 1, h: 60, d: 1_440 } as const;

/** Minutes of "2 hours before the game", also where "cooler 2" could be a place. */
export function minutesBeforeGame(text: string): number | undefined {
  const [, count = '', unit = ''] = LEAD.exec(text) ?? [];
  const each = UNIT_MIN[unit.toLowerCase() as keyof typeof UNIT_MIN];
  return each === undefined ? undefined : Math.round(each * Number(count));
}

/** Whether a lead in minutes or days counts from a game. */
export const isBeforeGame = (text: string): boolean => NAMED.test(text);
