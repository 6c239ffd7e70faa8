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
const ABOUT = /\.csv\b|\b(?:needs?|roster)\b/i;
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
const SHOW_ALL = of(
  `(?:(?:${SHOW}) )?(?:me )?(?:the |our )?(?:roster|needs of (?:everybody|everyone|the team|all)|everybody's needs|team needs)`,
);
const SET_MINE = of(
  `(?:save |note |update |set |change |these are |remember )?my ${NEEDS}(?:\\s+(?:are|is|now|to)|\\s*[:=-])*\\s+(.+?)`,
);
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
  const shown = codeIn(SHOW_OF, said);
  if (shown) return roster('show', { who: shown });
  if (SHOW_ALL.test(said)) return roster('show');
  return told(said);
}

function told(said: string): Slots | undefined {
  const mine = SET_MINE.exec(said)?.[1];
  if (mine !== undefined) return roster('set', { who: 'me', ...listed(mine) });
  const match = SET_OF.exec(said);
  const who = match?.[1] ?? match?.[2];
  const list = match?.[3];
  return who && list ? roster('set', { who: who.toUpperCase(), ...listed(list) }) : undefined;
}

function listed(text: string): Slots {
  const { avoid, foods, likes, pieces, none } = needList(text);
  return {
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
