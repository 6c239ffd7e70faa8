import type { Slots, SlotValue } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find } from '../slots/find.ts';
import { ingredient, nameOf, recipe } from '../slots/names.ts';
import { amount, numberOf, quantity } from '../slots/numbers.ts';
import { when } from '../slots/when.ts';

export const shop: IntentReader = {
  intent: 'shop',
  cues: [
    'shopping',
    'shop',
    'buy',
    'order',
    'grocery',
    'groceries',
    'list',
    'purchase',
    'ordering',
    'buying',
    'restock',
  ],
  rules: [
    [
      / (?:remove|drop|cross|scratch|take) (?:off )?(?:the )?F (?:from|off) (?:of )?(?:the |our )?(?:order|list) /,
      9,
    ],
    [/ (?:shopping|grocery|groceries|shop) /, 8],
    [/ (?:buy|buying|purchase|restock|reorder) /, 7.5],
    [/ order list /, 8.5],
    [/ (?:on|to|in) (?:the |our |next |mon )*order /, 7.6],
    [/ (?:to|on|off|from|onto) (?:the |our |my )?(?:shopping |order |grocery )?list /, 8],
    [/ (?:add|put) (?:[a-z]+ ){0,2}(?:Q |N )?(?:of )?(?:F|M|Y) (?:and F )*(?:to|on) /, 8],
    [/ (?:what|how much|how many) (?:[a-z]+ )*(?:U )?(?:of )?(?:[a-zF]+ )*(?:order|buy|get from) /, 8],
    [/^ (?:pls |please )?order (?:[a-z]+ )*(?:Q |N )?(?:of )?(?:F|M|Y) /, 7.5],
    [/ (?:need|have) to (?:order|buy|get) /, 7.5],
    [/ list for (?:W|N|game|[a-z]+ game) /, 5.5],
  ],
  slots: (lexed) => ({
    ...action(lexed),
    ...(find(lexed, / N (?:[a-z]+ )?(?:R|P) /) ? quantity(lexed) : {}),
    ...recipe(lexed),
    ...ingredient(lexed),
    ...amount(lexed),
    ...items(lexed),
    ...when(lexed),
  }),
};

function action({ shape }: Lexed): Slots {
  if (
    / (?:remove|delete|drop|take|scratch|cross) (?:[a-zFQNMY]+ )*(?:off|from|list) | (?:remove|delete) /.test(
      shape,
    )
  )
    return { action: 'remove' };
  return / (?:add|put|need more|also) /.test(shape) ||
    /^ (?:pls |please )?order (?:[a-z]+ )*(?:Q |N )?(?:of )?F /.test(shape)
    ? { action: 'add' }
    : {};
}

function items(lexed: Lexed): Slots {
  const foods = all(lexed, 'F');
  if (foods.length < 2) return {};
  const rows: SlotValue[] = foods.map((food) => {
    const before = lexed.seen[lexed.seen.indexOf(food) - 1];
    const measured = before?.sym === 'Q' ? { amount: numberOf(before), amount_unit: before.unit ?? '' } : {};
    return { ingredient: nameOf(food), ...measured };
  });
  return { items: rows };
}
