import type { Intent, Slots, SlotValue } from '../../slots.ts';
import type { IntentReader, Rule } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { find, first, lastIn } from '../slots/find.ts';
import { batch, ingredient, location, nameOf, recipe, sport } from '../slots/names.ts';
import { amount, bareUnit, numberOf, quantity, unitAfter } from '../slots/numbers.ts';
import { doneWhen, madeWhen } from '../slots/when.ts';

/** What is asked about pieces is no entry: "… ate three bites. How much protein was that?". */
const QUESTION = / how (?:much|many|do|does|long|to) | (?:who|why) (?!.* (?:ate|took|grabbed) N )/;

const COUNT = '(?:N|all|everything|the rest|rest|B|last)';

const SERVED: readonly Rule[] = [
  [
    new RegExp(
      ` (?:served|serve|gave|handed|distributed|passed|sold|used|fed|delivered|sent) (?:[a-zPS]+ ){0,5}${COUNT} `,
    ),
    7.5,
  ],
  [new RegExp(` (?:served|serving) (?:[a-z]+ )*${COUNT}? ?`), 6],
  [
    new RegExp(
      ` (?:P|S|team|athletes|guys|they|everyone|we|players|crew) (?:[a-z]+ )?(?:ate|eaten|grabbed|took|taken|finished|demolished|crushed|had|got) (?:[a-z]+ ){0,3}${COUNT} (?:of )?(?:[a-z]+ )?(?:R|P) `,
    ),
    8.6,
  ],
  [
    new RegExp(
      ` (?:ate|eaten|grabbed|took|taken|finished|demolished|crushed) (?:[a-z]+ ){0,3}${COUNT} (?:of )?(?:[a-z]+ )?(?:R|P)? ?`,
    ),
    6.7,
  ],
  [new RegExp(` took (?:[a-z]+ )*${COUNT} .*(?:bus|practice|field|game|team|lift|training|gym|trip) `), 7.5],
  [new RegExp(` took out ${COUNT} `), 7],
  [/ N (?:R|P|more)? ?(?:went|gone|eaten|served|taken|handed|used|grabbed|sold)(?: out)? /, 7],
  [/ (?:team|athletes|P|S|guys|players|they) (?:[a-z]+ )?(?:ate|took|grabbed|had|got|eaten) /, 6.8],
  [/ (?:handed|gave) (?:[a-z]+ )*out /, 7],
];

const TOSSED: readonly Rule[] = [
  [
    / (?:tossed|toss|tossing|threw|throw|thrown|throwing|dumped|dump|trashed|trash|discarded|discard|binned|bin|wasted|chucked|pitched) /,
    7.6,
  ],
  [/ (?:should|do|can) (?:[a-z]+ )*(?:toss|throw|trash) /, 3],
  [/ (?:dropped) (?:[a-z]+ )*N /, 7],
  [/ N (?:R|P)? ?(?:[a-z]+ )?(?:dropped|went bad|spoiled|moldy|got moldy|in the trash|ruined|garbage) /, 7.2],
];

const COUNTED: readonly Rule[] = [
  [/^ (?:i |we )?(?:see|found) N (?:R|P) (?:in|on) (?:the )?/, 8.6],
  [/ (?:number|count) of (?:R|P) (?:[a-z]+ |L )*is N $/, 8.6],
  [/ (?:counted|count|recount|recounted) (?:[a-z]+ ){0,4}Q (?:[a-z]+ ){0,2}F /, 8],
  [/ (?:counted|count|recount|recounted) (?:[a-z]+ ){0,4}N /, 7.6],
  [/ i count N /, 8],
  [/^ (?:inventory|stock|count|counts|current stock|on hand|shelf) (?:[a-z:]+ )*N (?:R|P) /, 7.5],
  [
    / (?:only|just|there are|theres|have|got|still|we have) (?:only |just |about |still |have |got )*N (?:A )?(?:R|P) (?:[a-z]+ )?(?:left|remaining|remain|in L) /,
    7.8,
  ],
  [/ N (?:R|P|of them)? ?(?:are )?(?:left|remaining|remain) $/, 6.9],
  [/ N (?:R|P) (?:left|remaining) /, 6.9],
];

export const served = countReader(
  'served',
  [
    'served',
    'serve',
    'gave',
    'handed',
    'ate',
    'took',
    'grabbed',
    'went',
    'gone',
    'eaten',
    'distributed',
    'used',
    'passed',
    'sold',
    'had',
    'fed',
    'taken',
    'got',
    'sent',
    'delivered',
    'finished',
    'serving',
    'demolished',
    'crushed',
  ],
  SERVED,
);
export const tossed = countReader(
  'tossed',
  [
    'tossed',
    'toss',
    'tossing',
    'threw',
    'throw',
    'thrown',
    'dumped',
    'dump',
    'trashed',
    'trash',
    'discarded',
    'discard',
    'binned',
    'bin',
    'wasted',
    'dropped',
    'spoiled',
    'moldy',
    'bad',
    'chucked',
    'ruined',
    'garbage',
    'pitched',
    'throwing',
  ],
  TOSSED,
);
export const counted = countReader(
  'counted',
  [
    'counted',
    'count',
    'recount',
    'recounted',
    'inventory',
    'left',
    'remaining',
    'remain',
    'have',
    'counts',
    'stock',
    'shelf',
    'in',
    'number',
  ],
  COUNTED,
);

function countReader(intent: Intent, cues: readonly string[], rules: readonly Rule[]): IntentReader {
  return { intent, cues, rules, never: QUESTION, slots: (lexed) => slotsOf(intent, lexed) };
}

function slotsOf(intent: Intent, lexed: Lexed): Slots {
  const { shape } = lexed;
  const dated = / (?:from|made|baked) (?:[a-z]+ )?W | W (?:R|P) /.test(shape);
  const count = countedIn(intent, lexed);
  return {
    ...food(intent, lexed),
    ...(count.quantity === undefined &&
    / (?:all|everything|the rest|(?:whole|entire|full|complete) (?:[a-z]+ |R |P ){0,2}) ?/.test(shape)
      ? { quantity: 'all', ...unitOf(lexed) }
      : count),
    ...(count.quantity !== undefined && count.unit === undefined ? unitOf(lexed) : {}),
    ...recipe(lexed),
    ...location(lexed),
    ...(dated ? madeWhen(lexed) : doneWhen(lexed)),
    ...reason(intent, shape),
    ...team(lexed),
    ...(/ (?:about|abt|around|like|roughly|approx|approximately|circa|maybe|almost|nearly) (?:N|B|Q) | (?:N|B|Q) (?:ish|or so) /.test(
      shape,
    )
      ? { approx: true }
      : {}),
    ...items(lexed),
    ...batch(lexed),
    ...leaving(intent, lexed),
    ...note(intent, lexed),
    ...remaining(lexed),
  };
}

/** Food of the pantry: "counted 12 lb oats", "tossed 2 lb raisins", "tossed all the spinach". */
function food(intent: Intent, lexed: Lexed): Slots {
  if (intent === 'served' || lexed.syms.has('R') || lexed.syms.has('P') || !lexed.syms.has('F')) return {};
  const lot = first(lexed, 'D');
  return {
    ...ingredient(lexed),
    ...amount(lexed),
    ...(lot ? { lot: lot.text } : {}),
  };
}

function unitOf(lexed: Lexed): Slots {
  const food = lexed.seen.find((atom) => atom.sym === 'P' && atom.unit !== 'person');
  const named = first(lexed, 'R')?.unit;
  return food
    ? { unit: food.unit }
    : named
      ? { unit: named }
      : bareUnit(lexed).unit === 'person'
        ? {}
        : bareUnit(lexed);
}

function reason(intent: Intent, shape: string): Slots {
  if (/ (?:expired|out of date|past date|past|old|went bad|spoiled|moldy) /.test(shape))
    return { reason: 'expired' };
  if (/ (?:tasting|taste|sample|samples|sampled|test) /.test(shape)) return { reason: 'tasting' };
  if (/ (?:bus|travel|trip|road|away|plane|travelling|traveling) /.test(shape)) return { reason: 'travel' };
  if (intent === 'tossed') return { reason: 'waste' };
  return intent === 'served' ? { reason: 'served' } : {};
}

/** "2 cups of overnight oats" counts cups; "no more date bars" counts none. */
function countedIn(intent: Intent, lexed: Lexed): Slots {
  const before = find(lexed, / N N (?:are |is )?(?:left|remaining|remain) /)?.[0];
  const count = before === undefined ? quantity(lexed) : { quantity: numberOf(before) };
  if (count.quantity !== undefined) return count;
  if (intent === 'counted' && / (?:no|zero) (?:more )?R /.test(lexed.shape)) return { quantity: 0 };
  const cups = first(lexed, 'Q');
  const isDish = lexed.syms.has('R') && !lexed.syms.has('F');
  return cups?.unit === 'cup' && isDish ? { quantity: numberOf(cups), unit: 'cup' } : count;
}

/** The team as it was called: "women's soccer", "the rowers". */
function team(lexed: Lexed): Slots {
  const atom = first(lexed, 'S');
  if (atom) return { team: SIDE.exec(lexed.text)?.[0].toLowerCase() ?? atom.word, ...sport(lexed) };
  const players = lexed.seen.find((each) => each.sym === 'P' && each.unit === 'person');
  const played = players && sport(lexed);
  return played?.sport === undefined ? {} : { team: players?.text, ...played };
}

const SIDE = /\b(?:wo)?men'?s\s+[a-z]+/i;

const TAKEN_OUT =
  / (?:took|take|taken|pulled|set|put|brought|bring) (?:[a-z]+ )?(?:out |(?:N|all) (?:[a-zARP]+ )*(?:out|to (?:the )?(?:tailgate|counter|table)) )/;

const ON_THE_ROAD =
  / (?:for|on|onto|into|to) (?:the |our |their |a )?(?:[a-zWS]+ )?(?:bus|buses|van|plane|charter|flight|road|trip|ride) /;
const EATEN_OR_COLD = / (?:ate|eaten|finished|devoured|demolished|cooler|cold|L) /;

/** "served 12 for the bus", "24 on the bus at 9": out of the cold from then on, unless it was eaten or is kept cold. */
const isOnTheRoad = ({ shape, said }: Lexed): boolean =>
  ON_THE_ROAD.test(shape) && !EATEN_OR_COLD.test(shape) && !/ ice(?:d|packs?)? /.test(said);

/** Out of the refrigerator, and whether with people who take it home. */
function leaving(intent: Intent, lexed: Lexed): Slots {
  if (intent !== 'served') return {};
  const home =
    / (?:home|tailgate|tailgating|backpacks?|to go|with (?:them|(?:the |our )?(?:athletes|players|team))) /.test(
      lexed.shape,
    );
  const air = first(lexed, 'T');
  return {
    ...(TAKEN_OUT.test(lexed.shape) || isOnTheRoad(lexed) ? { out: true } : {}),
    ...(home ? { home: true } : {}),
    ...(air?.value === undefined
      ? {}
      : { air_temp_f: air.unit === 'c' ? (air.value * 9) / 5 + 32 : air.value }),
  };
}

const WHY = /\(([^()]{2,80})\)|[,;:]\s*([a-z][a-z ']{2,80})$|\b(dropped|spoiled|moldy|burnt|broken)\b/i;

/** Why it was thrown out, in the person's words. */
function note(intent: Intent, lexed: Lexed): Slots {
  const match = intent === 'tossed' ? WHY.exec(lexed.text) : null;
  const words = match?.[1] ?? match?.[2] ?? match?.[3];
  return words === undefined ? {} : { note: words.trim() };
}

export function items(lexed: Lexed): Slots {
  const { seen } = lexed;
  const rows: SlotValue[] = [];
  seen.forEach((atom, i) => {
    const after = seen[i + 1]?.sym === 'of' ? seen[i + 2] : seen[i + 1];
    if (atom.sym !== 'N' || !after || !/^[RP]$/.test(after.sym)) return;
    rows.push({
      quantity: numberOf(atom),
      ...(unitAfter(seen, i).unit === undefined ? {} : { unit: unitAfter(seen, i).unit as string }),
      ...(after.sym === 'R' || after.id !== undefined ? { recipe: nameOf(after) } : {}),
    });
  });
  return rows.length > 1 ? { items: rows } : {};
}

function remaining(lexed: Lexed): Slots {
  const atom = lastIn(lexed, / N (?:A )?(?:R |P |of them )?(?:are |is )?(?:left|remaining|remain) /, 'N');
  return atom ? { remaining: numberOf(atom) } : {};
}
