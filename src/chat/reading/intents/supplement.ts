import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, first } from '../slots/find.ts';
import { nameOf } from '../slots/names.ts';

const POWDER = /powder|whey|casein|protein/;

export const supplement: IntentReader = {
  intent: 'supplement',
  cues: [
    'Y',
    'D',
    'supplement',
    'banned',
    'legal',
    'certified',
    'tested',
    'powder',
    'allowed',
    'permitted',
    'drug',
    'doping',
    'F',
    'pills',
    'gummies',
  ],
  rules: [
    [/ Y /, 6],
    [/ (?:can|may|should|could|is|are|ok|okay|will|does|do) (?:[a-zPS]+ ){0,5}Y /, 7.7],
    [/ Y (?:[a-z]+ )*(?:ok|okay|legal|banned|allowed|permitted|certified|tested|safe|good|limit|work) /, 8.3],
    [/ (?:banned|legal|permitted|prohibited|illegal) /, 7.5],
    [/ (?:third party|3rd party|nsf|batch tested|certified|informed) /, 7.5],
    [
      / (?:drug test|drug tests|tested positive|doping|anti doping|fail a test|drug testing|positive test|piss test) /,
      8.6,
    ],
    [/ (?:supplements?|supps|pills|gummies) /, 6.5],
    [
      / (?:is|are|can) (?:[a-z]+ )*(?:powder|F) (?:[a-z]+ )*(?:ok|okay|legal|banned|allowed|permitted|certified|approved|tested) /,
      7.4,
    ],
    [/ (?:N party|third party) (?:[a-z]+ )*tested /, 8],
    [/ allowed (?:[a-z]+ )*(?:by|to take|under) /, 6.5],
    [
      / (?:allowed|ok|okay|permitted|can we|may we) (?:[a-z]+ )*(?:hand|give|provide|supply|offer|buy) (?:out )?(?:[a-z]+ )*(?:Y|F) (?:[a-z]+ )*(?:to|for) /,
      8.4,
    ],
    [/ take (?:Y|F) /, 7],
    [
      / (?:is|are|can|may|ok) (?:[a-z]+ ){0,3}D .*(?:ok|okay|approved|tested|allowed|use) | D (?:[a-z]+ )*(?:ok|okay|approved|tested) /,
      8.6,
    ],
  ],
  slots: (lexed) => ({ ...product(lexed), ...lot(lexed), ...ask(lexed) }),
};

function product(lexed: Lexed): Slots {
  const atom = first(lexed, 'Y');
  if (atom) return { supplement: nameOf(atom) };
  const powder = all(lexed, 'F').find((each) => POWDER.test(each.word)) ?? first(lexed, 'F');
  if (powder) return { supplement: powder.word };
  const strange = lexed.seen.find((each) => each.unknown);
  return strange ? { supplement: strange.text } : {};
}

function lot(lexed: Lexed): Slots {
  const id = first(lexed, 'D')?.id ?? first(lexed, 'D')?.word;
  return id === undefined ? {} : { lot: id };
}

function ask({ shape }: Lexed): Slots {
  if (/ (?:drug test|drug tests|drug testing|positive|doping|piss test|fail) /.test(shape))
    return { ask: 'drug_test' };
  if (/ (?:certified|third party|N party|nsf|batch tested|tested|informed|certification) /.test(shape))
    return { ask: 'certified' };
  if (/ (?:limit|threshold|maximum|max|how much|too much) /.test(shape)) return { ask: 'limit' };
  if (
    / (?:we|school|kitchen|staff) (?:[a-z]+ )*(?:give|provide|buy|hand|offer|supply|serve) | (?:provide|provision|hand out) /.test(
      shape,
    )
  )
    return { ask: 'provision' };
  if (
    / (?:can|may|ok|okay|legal|banned|allowed|permitted|prohibited|safe|good|should|illegal|approved|fine|take) /.test(
      shape,
    )
  )
    return { ask: 'permitted' };
  return {};
}
