import type { Slots, SlotValue, Target } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, lastIn } from './find.ts';
import { nameOf } from './names.ts';
import { bareUnit, numberOf, pieceMass } from './numbers.ts';

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
    ...wetDry(lexed),
    ...(/ (?:even|also|still) (?:if|when|with) (?:[a-z]+ )*(?:scooped|scoops?|cups?|U) | if scooped /.test(
      shape,
    )
      ? { even_if_scooped: true }
      : {}),
    ...(/ (?:whole|full|entire) (?:U|packages?|packs?|packets?|cans?|jars?) /.test(shape)
      ? { whole: true }
      : {}),
    ...(/ how many /.test(shape) ? { ask: 'pieces', ...bareUnit(lexed) } : {}),
    ...(foods.length > 0 ? { ingredient_limit: foods } : {}),
  };
}

/** "wet to dry 0.8", "wet:dry at most 0.75": grams of wet over grams of dry. */
function wetDry({ text }: Lexed): Slots {
  const said =
    /\bwet\s*(?:to|over|[:/-])\s*dry\s*(?:ratio\s*)?(?:of|at|is|=|:)?\s*(under|over|above|below|least|most)?\s*(\d*\.?\d+)/i.exec(
      text,
    );
  if (!said) return {};
  const bound = said[1] === undefined ? undefined : AT_LEAST.test(said[1].toLowerCase()) ? 'least' : 'most';
  return { wet_dry: Number(said[2]), ...(bound ? { wet_dry_bound: bound } : {}) };
}

const AT_MOST = /^(?:most|max|maximum|under|below|less|than|to)$/;
const AT_LEAST = /^(?:least|min|minimum|over|above)$/;

function boundIn({ seen }: Lexed, atom: Atom): 'least' | 'most' | undefined {
  const at = seen.indexOf(atom);
  const before = seen.slice(Math.max(0, at - 2), at).map(({ sym }) => sym);
  if (before.some((sym) => AT_LEAST.test(sym))) return 'least';
  return before.some((sym) => AT_MOST.test(sym) && sym !== 'to' && sym !== 'than') ? 'most' : undefined;
}

function foodLimits(lexed: Lexed): SlotValue[] {
  const amount = lastIn(lexed, / (?:most|max|maximum|least|min|minimum|than) Q (?:of )?F /, 'Q');
  const food = lastIn(lexed, / (?:most|max|maximum|least|min|minimum|than) Q (?:of )?F /, 'F');
  if (!amount || !food) return [];
  const bound = boundIn(lexed, amount) ?? 'most';
  return [{ ingredient: nameOf(food), amount: numberOf(amount), amount_unit: amount.unit ?? 'g', bound }];
}
