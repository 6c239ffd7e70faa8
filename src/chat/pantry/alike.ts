import type { Food } from '../../nutrition/food.ts';
import { nameKey } from '../../nutrition/name-key.ts';
import type { Asked } from '../command.ts';

/**
 * The foods on the kitchen's cards that go by the words that were said: "the new pretzels" may be either of two
 * packages, and a change noted on the one that is not used would hold nothing back.
 */
export function alike({ request, kitchen }: Asked, named: Food): Food[] {
  const { foods, recipes } = kitchen.book;
  const text = ` ${nameKey(request.text)} `;
  const keysOf = (food: Food) => [food.name, ...food.aliases].map((name) => ` ${nameKey(name)} `);
  const said = keysOf(named)
    .filter((key) => text.includes(key))
    .sort((a, b) => b.length - a.length)[0];
  const used = new Set([...recipes.values()].flatMap(({ lines }) => lines.map(({ foodId }) => foodId)));
  const others = [...used]
    .flatMap((id) => foods.get(id) ?? [])
    .filter((food) => food !== named && said !== undefined && keysOf(food).some((key) => key.includes(said)));
  return [...(used.has(named.id) || others.length === 0 ? [named] : []), ...others];
}
