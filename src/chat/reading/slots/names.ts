import type { Need } from '../../../nutrition/allergens.ts';
import type { Slots } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { stem } from '../stem.ts';
import { all, first } from './find.ts';

/** The kitchen's id, else the words as typed with their spelling put right. */
export const nameOf = (atom: Atom): string => atom.id ?? atom.word;

export function recipe(lexed: Lexed): Slots {
  const known = knownRecipe(lexed);
  if (known.recipe !== undefined) return known;
  const strange = lexed.seen.filter((each) => each.unknown);
  return strange.length > 0 && strange.length < 4
    ? { recipe: strange.map((each) => each.text).join(' ') }
    : {};
}

export function knownRecipe(lexed: Lexed): Slots {
  const atom = first(lexed, 'R') ?? all(lexed, 'P').find((piece) => piece.id !== undefined);
  return atom ? { recipe: nameOf(atom) } : {};
}

/** Every dish a message names, in the order said: "the bites or the date bars". */
export const dishes = (lexed: Lexed): Atom[] =>
  lexed.seen.filter(({ sym, id }) => sym === 'R' || (sym === 'P' && id !== undefined));

/** Foods that a kitchen also makes: in "triple the granola" it is the dish. */
const DISH_FOODS: ReadonlySet<string> = new Set([
  'granola',
  'oatmeal',
  'hummus',
  'applesauce',
  'jerky',
  'sandwich',
]);

export function dish(lexed: Lexed): Slots {
  const named = recipe(lexed);
  if (named.recipe !== undefined) return named;
  const food = all(lexed, 'F').find((atom) => DISH_FOODS.has(atom.word));
  return food ? { recipe: food.word } : {};
}

/** Nutrients that are also things on a shelf: "out of sugar". */
const SHELF_NUTRIENTS: ReadonlySet<string> = new Set(['sugars', 'fiber']);

export function ingredientAtom(lexed: Lexed): Atom | undefined {
  return (
    first(lexed, 'F') ??
    all(lexed, 'M').find((atom) => SHELF_NUTRIENTS.has(atom.id ?? '')) ??
    lexed.seen.find((atom) => atom.sym === 'Y')
  );
}

export function ingredient(lexed: Lexed): Slots {
  const atom = ingredientAtom(lexed);
  if (!atom) return {};
  return { ingredient: atom.sym === 'M' ? 'sugar' : nameOf(atom) };
}

/** "batch B3" is one of ours, "lot L42" a maker's. */
export function batch(lexed: Lexed): Slots {
  const atom = first(lexed, 'D');
  return atom && /^b\d+$/i.test(atom.text) ? { batch: atom.text.toUpperCase() } : {};
}

export const location = (lexed: Lexed): Slots => {
  const atom = first(lexed, 'L');
  return atom ? { location: nameOf(atom) } : {};
};

export function needsOf(atoms: readonly Atom[]): Need[] {
  return [...new Set(atoms.flatMap((atom) => atom.needs ?? []))];
}

export function avoid(lexed: Lexed): Slots {
  const needs = needsOf([...all(lexed, 'A'), ...all(lexed, 'R')]);
  return needs.length > 0 ? { avoid: needs } : {};
}

export function nutrients(lexed: Lexed): Slots {
  const names = [...new Set(all(lexed, 'M').map((atom) => atom.id ?? atom.word))];
  return names.length > 0 ? { nutrient: names } : {};
}

const SPORT_OF_PERSON: ReadonlyMap<string, string> = new Map([
  ['swimmer', 'swimming'],
  ['wrestler', 'wrestling'],
  ['rower', 'rowing'],
  ['lineman', 'football'],
  ['linemen', 'football'],
]);

export function sport(lexed: Lexed): Slots {
  const atom = first(lexed, 'S');
  if (atom) return { sport: atom.id ?? atom.word };
  const person = all(lexed, 'P').flatMap((piece) => SPORT_OF_PERSON.get(stem(piece.word)) ?? [])[0];
  return person ? { sport: person } : {};
}

const MAY_FOLLOW = /\b(?:vs\.?|versus|against|@)\s+(?:the\s+)?([a-z][a-z .'-]*)/i;
const ENDS_NAME =
  /\s+(?:on|at|in|this|next|mon|tue|wed|thu|fri|sat|sun|today|tomorrow|away|home|for|with|and|we|is|to|has|have|been|got|get|gets|was|were)\b.*$/i;

/** Whom the game is against, lower case. */
export function opponent(lexed: Lexed): Slots {
  const name = MAY_FOLLOW.exec(lexed.text)?.[1]?.replace(ENDS_NAME, '').trim().toLowerCase();
  return name ? { opponent: name } : {};
}
