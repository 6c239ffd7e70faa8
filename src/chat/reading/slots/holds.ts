import type { Slots, SlotValue, Target } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { all, find } from './find.ts';
import { nameOf } from './names.ts';
import { bareUnit, numberOf, pieceMass } from './numbers.ts';
import { wetDry } from './wet-dry.ts';

/** "at least 30 % protein": a share of the energy. */
export function shareTargets(lexed: Lexed): Target[] {
  const covered = find(lexed, / G (?:of )?(?:energy |calories )?(?:from )?(?:M from )?M /);
  const share = covered?.find(({ sym }) => sym === 'G');
  const nutrient = covered?.findLast(({ sym }) => sym === 'M');
  if (share?.value === undefined || !nutrient) return [];
  const bound = boundIn(lexed, share);
  const name = nutrient.id ?? nutrient.word;
  return [{ nutrient: name, amount: share.value, unit: '%', ...(bound ? { bound } : {}) }];
}

/** "under 60 cents", "$0.75 a bar": what a piece may cost, in cents. */
export const costTargets = (lexed: Lexed): Target[] =>
  all(lexed, 'C').flatMap(({ value }) =>
    value === undefined
      ? []
      : [
          {
            nutrient: 'cost',
            amount: Number((value * 100).toFixed(4)),
            unit: 'cent',
            bound: 'most',
          } as const,
        ],
  );

/** What else a mix may be held to: piece mass, even if scooped, whole scoops, an ingredient's least or most, how many. */
export function holds(lexed: Lexed): Slots {
  const { shape } = lexed;
  const foods = foodLimits(lexed);
  return {
    ...pieceMass(lexed),
    ...wetDry(lexed.text),
    ...(/ (?:even|also|still) (?:if|when|with) (?:[a-z]+ )*(?:scooped|scoops?|cups?|U) | if scooped /.test(
      shape,
    )
      ? { even_if_scooped: true }
      : {}),
    ...wholes(lexed),
    ...(/ how many /.test(shape) ? { ask: 'pieces', ...bareUnit(lexed) } : {}),
    ...(foods.length > 0 ? { ingredient_limit: foods } : {}),
  };
}

const WHOLE = / (?:whole|full|entire) (?:U|packages?|packs?|packets?|cans?|jars?) (?:of (?:the |our )?F )?/;

/** "whole scoops", "whole jars of peanut butter". */
function wholes(lexed: Lexed): Slots {
  const covered = find(lexed, WHOLE);
  if (!covered) return {};
  const food = covered.find(({ sym }) => sym === 'F');
  const measure = covered[1];
  const unit = measure?.unit ?? measure?.word.replace(/s$/, '');
  return { whole: true, ...(food && unit ? { whole_of: nameOf(food), whole_unit: unit } : {}) };
}

/** Foods that stay as they are: "keep the honey", "honey fixed", "same oats". */
export function keptFoods(lexed: Lexed): Slots {
  const foods = KEPT.flatMap((pattern) => find(lexed, pattern)?.filter(({ sym }) => sym === 'F') ?? []);
  return foods.length > 0 ? { keep: [...new Set(foods.map(nameOf))] } : {};
}

const KEPT = [
  / (?:keep|keeping|dont touch|dont change|leave|fix|same amount of|same) (?:[a-z]+ )?F (?:and (?:the )?F )*(?!at |under |below |over |above |to |max |min )/,
  / F (?:and (?:the )?F )*(?:is |are |stays? |kept )?(?:fixed|unchanged|the same|as (?:is|are|it is|they are|before)) /,
];

const AT_MOST = /^(?:most|max|maximum|under|below|less|than|to)$/;
const AT_LEAST = /^(?:least|min|minimum|over|above)$/;

function boundIn({ seen }: Lexed, atom: Atom): 'least' | 'most' | undefined {
  const at = seen.indexOf(atom);
  const before = seen.slice(Math.max(0, at - 2), at).map(({ sym }) => sym);
  if (before.some((sym) => AT_LEAST.test(sym))) return 'least';
  return before.some((sym) => AT_MOST.test(sym) && sym !== 'to' && sym !== 'than') ? 'most' : undefined;
}

const LIMITED = [
  / (?:most|max|maximum|least|min|minimum|than|over|under|above|below) Q (?:of )?(?:the )?F /g,
  / F (?:at )?(?:most|max|maximum|least|min|minimum|over|under|above|below|no more than|more than|less than) Q (?!(?:of )?(?:the )?F )/g,
];

/** "at least 200 g oats", "honey at most 60 g": each, as often as it is said. */
function foodLimits(lexed: Lexed): SlotValue[] {
  const { shape, seen } = lexed;
  return LIMITED.flatMap((pattern) => [...shape.matchAll(pattern)]).flatMap((match) => {
    const from = shape.slice(0, match.index).split(' ').length - 1;
    const covered = seen.slice(from, from + match[0].trim().split(' ').length);
    const amount = covered.find(({ sym }) => sym === 'Q');
    const food = covered.find(({ sym }) => sym === 'F');
    if (!amount || !food) return [];
    const bound = boundIn(lexed, amount) ?? 'most';
    return [{ ingredient: nameOf(food), amount: numberOf(amount), amount_unit: amount.unit ?? 'g', bound }];
  });
}
