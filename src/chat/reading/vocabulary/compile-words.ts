import type { Book } from '../../../nutrition/book.ts';
import { NUTRIENTS } from '../../../nutrition/nutrients.ts';
import type { Meaning } from '../atoms.ts';
import { ruleWords } from '../rule-words.ts';
import { stem, stems, words } from '../stem.ts';
import type { Phrase, WordTable } from '../vocabulary.ts';
import { COMMON_WORDS } from './common-words.ts';
import { CUE_WORDS } from './cue-words.ts';
import { DAY_WORDS, DURATION_UNITS, MONTHS } from './days.ts';
import { NAMING_WORDS } from './name-words.ts';
import { ALLERGEN_NOUNS, NEED_PHRASES, NOT_FOODS } from './needs.ts';
import { FACTOR_WORDS, MULTIPLES, NUMBER_WORDS, PARTS } from './numbers.ts';
import { DISH_NOUNS, DISHES, FOODS, LOCATIONS, PANS, PIECES, SPORTS, SUPPLEMENTS } from './things.ts';
import { UNIT_SPELLINGS } from './units.ts';
import { URGENT_WORDS } from './urgent-words.ts';

/**
 * All phrases and words that messages to one kitchen are read with, from its own names and the general lists.
 * @example compileWords(book).phrases // [['oat', [{ stems: ['oat', 'bar'], meaning: { sym: 'R', id: 'oat-bars' } }, …]], …]
 */
export function compileWords(book: Book): WordTable {
  const phrases = new Map<string, Phrase[]>();
  const taken = new Set<string>();
  const known = new Set<string>([...COMMON_WORDS, ...NAMING_WORDS, ...ruleWords()]);
  const targets = new Set<string>([...CUE_WORDS, ...URGENT_WORDS]);
  const add = (text: string, meaning: Meaning) => {
    const said = words(text);
    const forms = said.map(stem);
    const [first] = forms;
    const phrase = forms.join(' ');
    if (first === undefined || taken.has(phrase) || (meaning.sym === 'F' && endsInNeed(forms))) return;
    taken.add(phrase);
    const row = phrases.get(first);
    if (row) row.push({ stems: forms, meaning });
    else phrases.set(first, [{ stems: forms, meaning }]);
    for (const word of said) {
      known.add(word);
      targets.add(word);
    }
    for (const form of forms) known.add(form);
  };
  addKitchen(book, add);
  addGeneral(add);
  for (const row of phrases.values()) row.sort((a, b) => b.stems.length - a.stems.length);
  for (const word of [
    ...CUE_WORDS,
    ...URGENT_WORDS,
    ...DAY_WORDS.keys(),
    ...MONTHS,
    ...DURATION_UNITS.keys(),
    ...DISH_NOUNS,
  ])
    known.add(word);
  for (const noun of DISH_NOUNS) known.add(stem(noun));
  for (const table of [NUMBER_WORDS, MULTIPLES, PARTS, FACTOR_WORDS])
    for (const word of table.keys()) known.add(word);
  return { phrases: [...phrases], known: [...known], targets: [...targets] };
}

type Add = (text: string, meaning: Meaning) => void;

/** What the kitchen itself names comes first: its own word wins over a general one. */
function addKitchen(book: Book, add: Add): void {
  addPieces(book, add);
  for (const recipe of book.recipes.values())
    for (const name of [recipe.title, recipe.id, ...recipe.aliases])
      add(name, { sym: 'R', id: recipe.id, needs: needsInName(name) });
  for (const { id, name } of book.settings.locations)
    for (const text of [name, id]) add(text, { sym: 'L', id });
  for (const pan of book.settings.pans)
    for (const text of [pan.name, pan.id]) add(text, { sym: 'X', id: pan.id });
  for (const [needs, phrases] of NEED_PHRASES) for (const phrase of phrases) add(phrase, { sym: 'A', needs });
  for (const { name, spellings } of NUTRIENTS)
    for (const spelling of [name, ...spellings])
      if (spelling.length > 2 && !NOT_NUTRIENTS.has(spelling)) add(spelling, { sym: 'M', id: name });
  for (const noun of NOT_FOODS) add(noun, { sym: 'V' });
  for (const [id, spellings] of Object.entries(SUPPLEMENTS))
    for (const text of spellings) add(text, { sym: 'Y', id });
  for (const food of book.foods.values())
    for (const name of [food.name, food.id, ...food.aliases])
      if (!TOO_SHORT.test(name)) add(name, { sym: 'F', id: food.id });
}

/** "Muffins" is a piece and, where one recipe answers to it, that recipe; "bars" and "bites" are any of them where there are several. */
function addPieces(book: Book, add: Add): void {
  const answering = new Map<string, string>();
  const kinds = new Map<string, number>();
  for (const recipe of book.recipes.values()) {
    const piece = stems(recipe.title).at(-1) ?? '';
    kinds.set(piece, (kinds.get(piece) ?? 0) + 1);
  }
  for (const recipe of book.recipes.values())
    for (const alias of recipe.aliases) answering.set(stems(alias).join(' '), recipe.id);
  for (const [piece, spellings] of Object.entries(PIECES)) {
    for (const text of spellings) {
      const isOneDish = !ANY_DISH.has(piece) || (kinds.get(piece) === 1 && piece !== 'person');
      const id = isOneDish ? answering.get(stems(text).join(' ')) : undefined;
      add(text, { sym: 'P', unit: piece, id });
    }
  }
}

const ANY_DISH: ReadonlySet<string> = new Set(['bar', 'bite', 'ball', 'piece', 'serving', 'snack', 'person']);

/** Written as one word, and the same place. */
const ONE_WORD_PLACES: ReadonlyMap<string, string> = new Map([
  ['walkin', 'walk in'],
  ['reachin', 'reach in'],
]);

function addGeneral(add: Add): void {
  for (const text of DISHES) add(text, { sym: 'R' });
  for (const text of LOCATIONS) add(text, { sym: 'L', id: ONE_WORD_PLACES.get(text) });
  for (const [id, spellings] of Object.entries(PANS))
    for (const text of spellings) add(text, { sym: 'X', id });
  for (const [unit, spellings] of UNIT_SPELLINGS) for (const text of spellings) add(text, { sym: 'U', unit });
  for (const text of FOODS) add(text, { sym: 'F' });
  for (const [, nouns] of ALLERGEN_NOUNS) for (const noun of nouns) add(noun, { sym: 'V' });
  for (const [id, spellings] of Object.entries(SPORTS))
    for (const text of spellings) add(text, { sym: 'S', id });
}

/** Need phrases in their one form, made once: every name of every food is held against them. */
const NEED_FORMS = NEED_PHRASES.map(
  ([needs, phrases]) => [needs, phrases.map((phrase) => stems(phrase).join(' '))] as const,
);
const ALL_NEED_FORMS: ReadonlySet<string> = new Set(NEED_FORMS.flatMap(([, forms]) => forms));
const LAST_OF_NEEDS: ReadonlySet<string> = new Set(
  [...ALL_NEED_FORMS].map((form) => form.slice(form.lastIndexOf(' ') + 1)),
);

/** "Oats gluten free" is a question more often than a name. */
const endsInNeed = (forms: readonly string[]): boolean =>
  LAST_OF_NEEDS.has(forms.at(-1) ?? '') &&
  forms.some((_, from) => from > 0 && ALL_NEED_FORMS.has(forms.slice(from).join(' ')));

const FIRST_OF_NEEDS: ReadonlySet<string> = new Set(
  [...ALL_NEED_FORMS].map((form) => form.split(' ', 1)[0] ?? form),
);

/** A name such as "nut-free bars" also says a need. */
const needsInName = (name: string): Meaning['needs'] => {
  const said = stems(name);
  if (!FIRST_OF_NEEDS.has(said[0] ?? '')) return undefined;
  const start = said.join(' ');
  return NEED_FORMS.find(([, forms]) => forms.some((form) => start.startsWith(`${form} `)))?.[0];
};

/** Spellings of nutrients that are foods or everyday words in a message. */
const NOT_NUTRIENTS: ReadonlySet<string> = new Set([
  'water',
  'pro',
  'sat',
  'cal',
  'moisture',
  'added sugar',
  'sugar',
]);
const TOO_SHORT = /^(?:.|[a-oq-z][a-z])$/;
