import { labelStandings } from '../../kitchen/pantry/book-as-told.ts';
import type { ToldLabel } from '../../kitchen/pantry/pantry.ts';
import type { Food } from '../../nutrition/food.ts';
import { nameKey } from '../../nutrition/name-key.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { Asked } from '../command.ts';
import { ownProduct } from '../own-product.ts';

/**
 * The foods on the kitchen's cards that go by the words that were said: "the new pretzels" may be either of two
 * packages, and a change noted on the one that is not used would hold nothing back.
 */
export function alike({ request, kitchen }: Asked, named: Food): Food[] {
  const { foods, recipes } = kitchen.book;
  const text = ` ${nameKey(request.text)} `;
  const keysOf = (food: Food) => [food.name, food.id, ...food.aliases].map((name) => ` ${nameKey(name)} `);
  const said = keysOf(named)
    .filter((key) => text.includes(key))
    .sort((a, b) => b.length - a.length)[0];
  const used = new Set([...recipes.values()].flatMap(({ lines }) => lines.map(({ foodId }) => foodId)));
  const others = [...used]
    .flatMap((id) => foods.get(id) ?? [])
    .filter((food) => food !== named && said !== undefined && keysOf(food).some((key) => key.includes(said)));
  const own = ownProduct(kitchen.book, named);
  const isOnCards = used.has(named.id) || others.length > 0;
  if (!isOnCards) return [own !== undefined && used.has(own.id) ? own : named];
  return [...(used.has(named.id) ? [named] : []), ...others];
}

/**
 * The foods whose label was read: the one named, with those that were held back by the same message. A notice told of
 * another package stays open, though its name holds the word: milk that was read says nothing of oat milk.
 * @throws Problem `needs_more` when the word is of several packages that were told of apart.
 */
export function readTogether(asked: Asked, named: Food, notes: readonly ToldLabel[]): Food[] {
  const foods = alike(asked, named);
  const standings = labelStandings(notes);
  const open = foods.filter(({ id }) => standings.get(id)?.isOpen);
  const toldAt = (food: Food) => notes.findLast(({ foodId }) => foodId === food.id)?.atMs;
  const first = foods.includes(named) ? named : (open[0] ?? foods[0] ?? named);
  const together = open.filter((food) => toldAt(food) === toldAt(first));
  if (foods.includes(named)) return open.includes(named) ? together : [named];
  if (together.length < open.length) {
    throw new Problem(
      'needs_more',
      'Which label was read? Several changed, told of apart.',
      `Write one: ${open.map(({ name }) => `"checked the label of ${name.toLowerCase()}"`).join(', ')}.`,
    );
  }
  return open.length > 0 ? together : foods;
}
