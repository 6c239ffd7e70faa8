import type { ListedItem } from '../../../kitchen/shopping/list-now.ts';
import type { Shelf } from '../../../kitchen/shopping/shelf-now.ts';
import { isWanted, type Shopping, type ShoppingLine } from '../../../kitchen/shopping/shopping.ts';
import type { Answer, NextStep, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { atLeast, dollars, namesOf, unpricedLine } from '../../money.ts';
import { listed } from '../../need-words.ts';
import { pantryWords } from '../../pantry/amount.ts';
import { clockText } from '../../stock/words.ts';
import { budgetLeft } from './budget-left.ts';
import { dataOf } from './shopping-data.ts';

/** What a shopping answer is made of. */
export interface ShoppingTold {
  /** "40 oat bars", "Sat Dec 5, vs Riverton", "the list". */
  readonly name: string;
  readonly shopping: Shopping;
  readonly shelf: Shelf;
  readonly lines: readonly string[];
  readonly notes: readonly string[];
  /** Sections of its own, after what is bought. */
  readonly more?: readonly Section[];
  readonly next: readonly NextStep[];
  readonly data?: Record<string, unknown>;
  /** Where it says what somebody avoids. */
  readonly isPersonal?: boolean;
}

const MEASURED =
  'Needed is what the bench measures, never less than worked out, so rounding leaves nobody short; what stays in the bowl is in it. Packages are rounded up.';

/** The list: count and total first, then what to take in each section of the shop, what is there, and what is not known. */
export async function shoppingAnswer(asked: Asked, told: ShoppingTold): Promise<Answer> {
  const { shopping, shelf } = told;
  const buying = shopping.lines.filter(isWanted);
  const budget = await budgetLeft(asked, shopping);
  const missing = unpricedLine(namesOf(shopping.unpriced));
  return {
    title: titleOf(told, buying),
    sections: [
      ...listOf('For', told.lines),
      ...sectionsOf(asked, shopping),
      ...(budget.line === undefined ? [] : [{ kind: 'text' as const, text: budget.line }]),
      ...(missing === undefined ? [] : [{ kind: 'text' as const, text: missing }]),
      ...(told.more ?? []),
      ...onHand(shopping),
      ...notKnown(shopping),
      ...listOf('Taken for granted', told.notes),
      ...(shopping.lines.some(({ neededG }) => neededG > 0)
        ? [{ kind: 'text' as const, text: MEASURED }]
        : []),
    ],
    cautions: cautionsOf(shopping.lines, shelf),
    next: told.next,
    audience: told.isPersonal ? 'asker' : 'channel',
    data: { ...dataOf(shopping), ...budget.data, ...told.data },
  };
}

function titleOf({ name, shopping }: ShoppingTold, buying: readonly ShoppingLine[]): string {
  const count = buying.length + shopping.others.length;
  const things = count === 1 ? '1 thing' : `${count} things`;
  if (count === 0) return `Nothing to buy for ${name}: all of it is on hand.`;
  const isPriceless = shopping.cents === 0 && (shopping.unpriced.length > 0 || shopping.others.length > 0);
  const total = isPriceless
    ? 'price not known'
    : atLeast(shopping.cents, [...shopping.unpriced, ...shopping.others]);
  return `${things} to buy for ${name}: ${total}.`;
}

const listOf = (heading: string, items: readonly string[]): Section[] =>
  items.length > 0 ? [{ kind: 'list', heading, items }] : [];

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** A list for each section of the shop, in the order of their names; what has no section last. */
function sectionsOf(asked: Asked, { lines, others }: Shopping): Section[] {
  const bySection = new Map<string, string[]>();
  for (const line of lines.filter(isWanted)) {
    bySection.set(line.section, [...(bySection.get(line.section) ?? []), lineText(asked, line)]);
  }
  return [
    ...[...bySection].flatMap(([section, items]) => listOf(capital(section), items)),
    ...listOf(
      'Not a food of this kitchen',
      others.map((item) => `${capital(item.name)}${massText(item)}, price not known; ${byHand(asked, item)}`),
    ),
  ];
}

const massText = ({ massG }: ListedItem): string => (massG === undefined ? '' : `, ${pantryWords(massG)}`);

/** "Honey: 1 x 5 lb jug, $17.99; need 1.4 lb (640 g), have 4 oz (113 g)". */
function lineText(
  asked: Asked,
  { food, packages, toBuyG, neededG, onHandG, listed: item }: ShoppingLine,
): string {
  const what = packages
    ? `${packages.count} x ${packages.packageName}, ${dollars(packages.cents)}`
    : `${toBuyG > 0 ? pantryWords(toBuyG) : 'amount not said'}, package and price not known`;
  const have =
    onHandG === undefined ? ', on hand not known' : onHandG > 0 ? `, have ${pantryWords(onHandG)}` : '';
  const needed = neededG > 0 ? [`need ${pantryWords(neededG)}${have}`] : [];
  const asks = item
    ? [`${item.massG === undefined ? '' : `${pantryWords(item.massG)} `}${byHand(asked, item)}`]
    : [];
  return [`${food.name}: ${what}`, ...needed, ...asks].join('; ');
}

/** "added by ST-01, 10:05 am". */
export function byHand(asked: Asked, { added }: ListedItem): string {
  const told = added.map(({ who, atMs }) => `${who}, ${clockText(asked, atMs)}`);
  return `added by ${listed(told.slice(-3))}`;
}

function onHand({ lines }: Shopping): Section[] {
  const there = lines.filter((line) => !isWanted(line));
  return [
    ...listOf(
      'On hand, nothing to buy',
      there.map(
        ({ food, neededG, onHandG = 0 }) =>
          `${food.name}: need ${pantryWords(neededG)}, have ${pantryWords(onHandG)}`,
      ),
    ),
    ...listOf(
      'On the shelf but past its date when it is used, not counted',
      lines.flatMap(({ food, pastDateG }) =>
        pastDateG > 0 ? [`${food.name}, opened: ${pantryWords(pastDateG)} at most`] : [],
      ),
    ),
  ];
}

/** What nobody has logged may well be on the shelf; a list that hides that buys everything twice. */
function notKnown({ lines }: Shopping): Section[] {
  const needed = lines.filter(({ neededG }) => neededG > 0);
  const unknown = needed.filter(({ onHandG }) => onHandG === undefined);
  const [most] = [...unknown].sort((a, b) => b.neededG - a.neededG);
  if (!most) return [];
  const what =
    unknown.length === needed.length
      ? 'The pantry has none of it on record'
      : `The pantry has ${unknown.length} of ${needed.length} not on record`;
  return [
    {
      kind: 'text',
      text: `${what}, so nothing was taken off: look at the shelf first. "counted 2 lb ${most.food.name.toLowerCase()}" puts one on record.`,
    },
  ];
}

function cautionsOf(lines: readonly ShoppingLine[], shelf: Shelf): string[] {
  const changed = lines.filter(({ food }) => shelf.uncheckedLabels.has(food.id)).map(({ food }) => food);
  return [
    ...(changed.length > 0
      ? [
          `The label of ${listed(namesOf(changed))} changed and nobody has checked it: what uses it cannot be logged as made until staff have.`,
        ]
      : []),
    ...(lines.some(isWanted)
      ? [
          'Another brand or maker: read its label before it is used, "may contain" too; allergens go by the package.',
        ]
      : []),
  ];
}
