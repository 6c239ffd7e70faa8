import type { Slots, SlotValue } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { find } from '../slots/find.ts';
import { costTargets, holds, keptFoods, shareTargets } from '../slots/holds.ts';
import { avoid, dish } from '../slots/names.ts';
import { quantity } from '../slots/numbers.ts';
import { targets } from '../slots/targets.ts';

const AMOUNT = '(?:Q|N)';

export const balance: IntentReader = {
  intent: 'balance',
  cues: ['M', 'balance', 'rebalance', 'adjust', 'target', 'wet'],
  rules: [
    [/ (?:balance|rebalance|rebalanced|balanced|adjust|tweak|optimize|reformulate) /, 9],
    [
      new RegExp(
        `^ (?:[a-z]+ ){0,3}(?:keep|hold|hit|get|reach|make|bump|boost|bring|raise|lower|reduce|drop|increase|decrease|cut|need|want|give) .*${AMOUNT} (?:of )?M `,
      ),
      7.6,
    ],
    [
      new RegExp(
        `^ (?:[a-z]+ ){0,3}(?:keep|hold|hit|get|reach|make|bump|boost|bring|raise|lower|reduce|drop|increase|decrease|cut|need|want) .*M .*${AMOUNT} `,
      ),
      7.4,
    ],
    [
      new RegExp(
        ` (?:under|below|over|above|at least|at most|less than|more than|max|min|minimum|maximum|no more than) ${AMOUNT} (?:of )?M `,
      ),
      7,
    ],
    [
      new RegExp(
        ` M (?:[a-z]+ )*(?:under|below|over|above|at least|at most|less than|more than|max|min) ${AMOUNT} `,
      ),
      7,
    ],
    [new RegExp(` ${AMOUNT} (?:of )?M .*(?:under|below|max|at most|less than) ${AMOUNT} `), 8],
    [/ (?:higher|more|extra|lower|less|reduce|increase|boost|raise|bump) (?:[a-z]+ )*M .*(?:Q|N|G) /, 7.5],
    [
      / (?:make|get|want|need) (?:[a-z]+ )*(?:R|P|it|them) (?:[a-z]+ )*(?:higher|lower|more|less) (?:in )?M /,
      8,
    ],
    [/ (?:raise|boost|bump|lower|reduce|increase|decrease) (?:[a-z]+ )*M /, 7],
    [/ wet (?:to |over |- )?(?:\/ )?dry (?:ratio )?(?:[a-z]+ ){0,3}(?:N|Q) /, 9.6],
    // A nutrient with a price, a weight, whole measures or a scoop in doubt is something to be held, not looked up.
    [
      new RegExp(` (?:R|P|it|them) .*${AMOUNT} (?:of )?M .*C | (?:R|P|it|them) .*C .*${AMOUNT} (?:of )?M `),
      9.2,
    ],
    [
      new RegExp(` ${AMOUNT} (?:of )?M .*(?:and|at|with|,)? ?(?:a |each )?P (?:of |at |weighing |mass )?Q `),
      9.2,
    ],
    [
      / M .*(?:even|also|still) (?:if|when|with) (?:[a-z]+ )*(?:scooped|scoops?|cups?|U) | M .*if scooped /,
      9.2,
    ],
    [
      new RegExp(` ${AMOUNT} (?:of )?M .*(?:whole|full|entire) (?:U|packages?|packs?|packets?|cans?|jars?) `),
      9.2,
    ],
    [new RegExp(` R (?:[a-z]+ )*(?:between |from )?N (?:to|and|-) ${AMOUNT} (?:of )?M `), 8],
    [new RegExp(` R (?:[a-z]+ )*between ${AMOUNT} (?:of )?M `), 8],
    [
      new RegExp(
        ` ${AMOUNT} (?:of )?M .*F (?:is |are |stays? |kept )?(?:fixed|unchanged|the same|as it is|as they are) `,
      ),
      9.2,
    ],
    [new RegExp(` ${AMOUNT} (?:of )?M .*(?:keep|fix|same|leave|dont change|dont touch) (?:[a-z]+ )?F `), 9.2],
    [/ R (?:[a-z]+ )*G (?:of )?(?:the )?M from M /, 9],
    // What if: pieces of so much each, and how many there are then.
    [/ (?:N|Q) (?:of )?M (?:[a-zP,]+ )*how many (?:P|pieces) /, 9.2],
    [/ how many (?:N|Q) (?:of )?M (?:P|pieces) /, 9.2],
  ],
  slots: (lexed) => {
    const goal = [...targets(lexed), ...shareTargets(lexed), ...costTargets(lexed)];
    return {
      ...(goal.length > 0 ? { target: goal as unknown as SlotValue } : {}),
      ...dish(lexed),
      ...avoid(lexed),
      ...counted(lexed),
      ...keptFoods(lexed),
      ...holds(lexed),
    };
  },
};

const counted = (lexed: Lexed): Slots => (find(lexed, / N (?:[a-z]+ )?(?:P|R) /) ? quantity(lexed) : {});
