import type { Asked } from '../command.ts';
import type { HomePart } from './home.ts';
import { heading, lines, words } from './parts.ts';

/** For people from outside the team: what is cooked here, and nothing of what is there. */
export async function guestHome({ kitchen }: Asked): Promise<readonly HomePart[]> {
  const titles = [...kitchen.book.recipes.values()].map(({ title }) => title);
  return [
    heading('What this kitchen makes'),
    lines(titles),
    words('Write to me for what is in a recipe: "allergens oat bars".'),
  ];
}
