import type { Slots } from '../slots.ts';
import type { Lexed } from './lexed.ts';
import { needList } from './need-list.ts';

/** A code such as WP-07, or a workspace's user id. */
const CODE = '([a-z]{1,8}[-_]?\\d[a-z0-9_-]{0,20}|[uw][a-z0-9]{7,14})';
const NEEDS = '(?:food |dietary |allergy )?needs?';

const IMPORT =
  /^(?:please )?(?:import|load|upload|sync)\s+(?:the\s+|a\s+|file\s+|roster\s+)*["']?(.+?\.csv)\b/i;
const IMPORT_WHICH = /^(?:please )?(?:import|load|upload)\s+(?:the\s+|a\s+|our\s+)?roster\s*$/i;
/** No sentence below goes without one of these. */
const ABOUT = /\.csv\b|\b(?:needs?|roster|allerg(?:y|ies|ic|ens?)|avoids?)\b/i;
const FORGET = 'forget|delete|remove|erase|clear';
const SHOW = "show|list|see|tell me|what are|what're|whats|what's|give me";

const of = (pattern: string): RegExp =>
  new RegExp(
    `^(?:please |can you |could you )?${pattern}(?:,? (?:please|pls|thanks|thank you|thx))?\\s*[?.!]*$`,
    'i',
  );

const FORGET_MINE = of(`(?:${FORGET}) (?:all )?(?:of )?my ${NEEDS}`);
const FORGET_OF = of(`(?:${FORGET}) (?:the )?(?:${NEEDS} (?:of|for) ${CODE}|${CODE}(?:'s)? ${NEEDS})`);
const SHOW_MINE = of(`(?:(?:${SHOW}) )?(?:me )?my ${NEEDS}`);
const SHOW_OF = of(
  `(?:(?:${SHOW}) )?(?:me )?(?:the )?(?:${NEEDS} (?:of|for) ${CODE}|${CODE}(?:'s)? ${NEEDS}|what does ${CODE} need)`,
);
/** "what allergies does WP-18 have", "is WP-03 allergic to peanuts": all that is kept answers it. */
const ASK_OF = of(
  `(?:(?:what|which) (?:allerg(?:y|ies|ens)|food allergies|${NEEDS}) (?:does|do|has) ${CODE}(?: have| avoid)?|what(?: is|'s|s) ${CODE} allergic to|what does ${CODE} avoid|is ${CODE} allergic(?: to .{1,60})?|does ${CODE} (?:have|avoid) .{0,60}(?:allerg(?:y|ies)|needs?)|(?:${SHOW})? ?(?:the )?allerg(?:y|ies) (?:of|for) ${CODE}|${CODE}(?:'s)? allerg(?:y|ies))`,
);
const SHOW_ALL = of(
  `(?:(?:${SHOW}) )?(?:me )?(?:the |our )?(?:roster|needs of (?:everybody|everyone|the team|all)|everybody's needs|team needs)`,
);
const SET_MINE = of(
  `(?:save |note |update |set |change |these are |remember )?my ${NEEDS}(?:\\s+(?:are|is|now|to)|\\s*[:=-])*\\s+(.+?)`,
);
const ADD_MINE = of(`(?:add|put) (.+?) (?:to|on|in|into) my ${NEEDS}`);
const DROP_MINE = of(
  `(?:remove|drop|delete|take|forget|strike) (?:away |off |out )?(?:the )?(.+?) (?:off|from|out of|of) my ${NEEDS}`,
);
const DROP_OF = of(
  `(?:remove|drop|delete|take|forget|strike) (?:the )?(.+?) (?:off|from|out of) (?:the )?(?:${NEEDS} (?:of|for) ${CODE}|${CODE}(?:'s)? ${NEEDS})`,
);
/** "My needs are only milk", "my needs: just milk now": what was kept before is meant to go. */
const ONLY =
  /^(?:(?:now|just|only|solely|nothing (?:but|except))\s+)*(?:just|only|solely|nothing (?:but|except))\s+|\s+(?:only|and nothing else|nothing else)$/gi;
const SET_OF = of(
  `(?:save |note |update |set |change )?(?:the )?(?:${NEEDS} (?:of|for) ${CODE}|${CODE}(?:'s)? ${NEEDS})(?:\\s+(?:are|is|now|to)|\\s*[:=-])*\\s+(.+?)`,
);

/**
 * What a message says or asks about who needs what; `undefined` when it is about something else. These sentences have
 * one shape each, so they are read before the grammars, which would see the foods in them.
 * @example rosterSentence(lex('my needs: peanut, vegan')) // { scope: 'roster', action: 'set', avoid: ['peanut', 'animal'] }
 */
export function rosterSentence({ text }: Lexed): Slots | undefined {
  if (!ABOUT.test(text)) return undefined;
  const said = text.trim();
  const file = IMPORT.exec(said)?.[1];
  if (file !== undefined) return roster('import', { file });
  if (IMPORT_WHICH.test(said)) return roster('import');
  if (FORGET_MINE.test(said)) return roster('forget', { who: 'me' });
  const forgotten = codeIn(FORGET_OF, said);
  if (forgotten) return roster('forget', { who: forgotten });
  if (SHOW_MINE.test(said)) return roster('show', { who: 'me' });
  const shown = codeIn(SHOW_OF, said) ?? codeIn(ASK_OF, said);
  if (shown) return roster('show', { who: shown });
  if (SHOW_ALL.test(said)) return roster('show');
  return told(said);
}

function told(said: string): Slots | undefined {
  const dropped = DROP_MINE.exec(said)?.[1];
  if (dropped !== undefined) return roster('set', { who: 'me', drop: true, ...listed(dropped) });
  const [, dropOf, ofOne, ofOther] = DROP_OF.exec(said) ?? [];
  const whose = ofOne ?? ofOther;
  if (dropOf && whose) return roster('set', { who: whose.toUpperCase(), drop: true, ...listed(dropOf) });
  const mine = SET_MINE.exec(said)?.[1] ?? ADD_MINE.exec(said)?.[1];
  if (mine !== undefined) return roster('set', { who: 'me', ...listed(mine) });
  const match = SET_OF.exec(said);
  const who = match?.[1] ?? match?.[2];
  const list = match?.[3];
  return who && list ? roster('set', { who: who.toUpperCase(), ...listed(list) }) : undefined;
}

function listed(text: string): Slots {
  const list = text.replaceAll(ONLY, ' ').trim();
  const isOnly = list !== text.trim() && list !== '';
  const { avoid, foods, likes, pieces, none } = needList(isOnly ? list : text);
  return {
    ...(isOnly ? { only: true } : {}),
    ...(avoid.length > 0 ? { avoid } : {}),
    ...(foods.length > 0 ? { foods } : {}),
    ...(likes.length > 0 ? { likes } : {}),
    ...(pieces === undefined ? {} : { pieces }),
    ...(none ? { none } : {}),
  };
}

const codeIn = (pattern: RegExp, said: string): string | undefined =>
  pattern
    .exec(said)
    ?.slice(1)
    .find((group) => group !== undefined)
    ?.toUpperCase();

const roster = (action: string, slots: Slots = {}): Slots => ({ scope: 'roster', action, ...slots });
