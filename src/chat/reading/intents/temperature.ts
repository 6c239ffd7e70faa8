import type { Slots, SlotValue } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first } from '../slots/find.ts';
import { nameOf, recipe } from '../slots/names.ts';
import { numberOf, quantity } from '../slots/numbers.ts';
import { doneWhen, durationMin } from '../slots/when.ts';

export const temperature: IntentReader = {
  intent: 'temperature',
  cues: [
    'T',
    'L',
    'holding',
    'held',
    'too',
    'temp',
    'temperature',
    'temps',
    'out',
    'power',
    'cold',
    'hot',
    'counter',
    'cooling',
    'warm',
    'outage',
    'degrees',
    'thermometer',
    'cool',
    'cooled',
    'received',
    'room',
    'left',
    'fridge',
    'car',
    'died',
    'sat',
    'danger',
    'readings',
    'reading',
    'internal',
    'core',
    'center',
    'probed',
    'from',
    'went',
    'dropped',
    'forgot',
    'soup',
  ],
  rules: [
    [/ (?:R|F|P) (?:is |are )?(?:holding|held|hot holding) (?:at )?N /, 8.3],
    [
      / (?:R|F|P|it|they|center|middle) (?:[a-z]+ ){0,3}(?:to|at|is|was|reads?|hit) (?:about |only )?N (?:internal|inside|in the (?:middle|center)|core) | N internal /,
      8.8,
    ],
    [/ is N too (?:warm|cold|hot) /, 8.5],
    [
      / (?:L|it|R|F|P) (?:[a-z]+ ){0,5}(?:is|its|was|at|reads|reading|says|shows|hit|reached|holding) (?:at |about |around )?N (?:now |right now |in there |inside |rn |deg |again )*$/,
      8.3,
    ],
    [/ L .*(?:its|at|is|reads|says) N (?:in there|inside|in it|now|rn) /, 8.6],
    [/ (?:temp|temps|temperature) (?:[a-z]+ )?N | (?:temp|temperature) (?:[a-z]+ ){0,3}N (?:L )?$/, 8],
    [
      / (?:R|F|P) (?:is |are |was |were )?(?:holding|held|reached|hit|cooked|internal|probed|temped|cooled|cooling|came out) (?:[a-z]+ )*(?:at |to )?N $/,
      8.2,
    ],
    [/ (?:max|maximum|min|minimum|highest|lowest|safe|right|correct|proper) (?:[a-z]+ )*temp /, 8.2],
    [
      / (?:R|P|F) (?:are |were |was |sat |been )*in (?:my|the|a|our) (?:car|van|truck|trunk|bag|bus|locker) (?:[a-z]+ )*(?:Z|W|all|since|overnight) /,
      8.6,
    ],
    [/ lost power | power (?:[a-z]+ )*(?:Z|out|off|back) /, 8.5],
    [
      / (?:left|forgot|been|sat|sitting) (?:[a-zRPFL]+ )*in (?:the |my |a |his |her |our )?(?:van|car|truck|trunk|bag|backpack|locker|bus|sun|gym bag) .*(?:Z|W|all|since|overnight) /,
      8.6,
    ],

    [/^ (?:about |its |just )?N (?:in|at) (?:the |our )?L (?:now |rn )?$/, 7.8],
    [
      / (?:from|was|were) (?:N|T) (?:[a-zW]+ )*(?:to|and|then|down to|now) (?:N|T) (?:[a-z]+ )*(?:W|Z|by|after|in) /,
      8.2,
    ],
    [/ T /, 5],
    [/ L (?:[a-zW:]+ ){0,5}T /, 8],
    [/ T (?:[a-z]+ ){0,4}L /, 7.5],
    [
      / L (?:[a-z]+ ){0,4}(?:is|reads|reading|at|says|shows|hit|was|temp|running|reached) (?:[a-z]+ ){0,2}N (?!P|R|A)/,
      8,
    ],
    [/^ L -? ?N (?:now |rn |(?:at )?W )*$/, 7.9],
    [/ L N L N /, 8],
    [/ (?:temp|temperature|temps) /, 6.5],
    [/ (?:how|what) (?:cold|hot|warm|temp|temperature) /, 8],
    [/ (?:what|how) .*(?:temp|temperature) (?:[a-z]+ )*(?:should|is|do|for|ok) /, 8],
    [
      / (?:R|P|F|it|they|them|food|everything|these|stuff) (?:[a-zNPW]+ ){0,6}(?:out|counter|room temp|unrefrigerated|warm) (?:[a-z]+ ){0,5}(?:Z|overnight|W|all|N) /,
      8.5,
    ],
    [/ (?:out|counter|unrefrigerated|sitting) (?:[a-z]+ ){0,4}(?:for |about |like )?(?:Z|overnight) /, 8],
    [
      / (?:been|was|were|left|sat|sitting|forgot) (?:[a-zRPF]+ ){0,5}(?:out|on the counter|on counter|in the sun|in W|in (?:[a-z]+ )?car) /,
      8,
    ],
    [/ (?:been|was|were|left|sat) (?:[a-z]+ ){0,3}(?:out|counter) (?:since|all|over|for) /, 8.5],
    [/ power (?:[a-z]+ ){0,3}(?:out|outage|cut|off|died|failure|back|went|down) /, 8.5],
    [/ outage /, 8],
    [/ (?:cooling|cool|cooled) .*T /, 8.6],
    [/ T (?:[a-z]+ )?(?:after|in|for|at) Z /, 8.6],
    [
      / (?:L|freezer) (?:[a-z]+ )?(?:died|broke|broken|off|stopped|failed|not working|down|unplugged|open|warm) /,
      7.5,
    ],
    [/ (?:cooling|cool|cooled|hot holding|hot hold|cold holding|danger zone|reheat) /, 5.5],
    [/ (?:hot holding|hot hold|cold holding|cold hold|danger zone) /, 8],
    [/ (?:delivery|delivered|received|receiving|truck) .*T /, 8.5],
    [/ (?:door|left) (?:[a-z]+ )*open /, 6.5],
    [/ (?:missed|missing) readings? | readings? (?:missed|missing) /, 8.2],
    [/ L log /, 6],
    [/ (?:log|record) (?:[a-z]+ )*(?:temp|temperature|T|L) /, 7],
    [/ how long (?:[a-zRPF]+ )*(?:sit|out|unrefrigerated|without L|room|counter) /, 8.3],
    [/ (?:forgot|left) (?:[a-z]+ )*(?:R|P|F) (?:[a-z]+ )*(?:out|back in L|on) /, 8.5],
  ],
  slots(lexed) {
    const found = event(lexed);
    const isAsk =
      / (?:how cold|how hot|how warm|what temp|what temperature|should|limit|danger zone|how long can|max|maximum|min|minimum|highest|lowest|safe temp|right temp) /.test(
        lexed.shape,
      );
    const long = lasted(lexed);
    return {
      ...reading(lexed),
      ...place(lexed),
      ...food(lexed),
      ...(long === undefined ? {} : { duration_min: long }),
      ...readings(lexed),
      ...found,
      ...(isAsk ? { ask: 'limit' } : {}),
      ...log(lexed),
      ...action(lexed),
      ...doneWhen(lexed),
      ...(found.event === 'time_out' ? quantity(lexed) : {}),
    };
  },
};

/** The log itself is asked for, rather than a reading told. */
function log({ shape }: Lexed): Slots {
  return / (?:log|logs|readings?|export|history|csv) /.test(shape) && !/ [TN] /.test(shape)
    ? { output: 'log' }
    : {};
}

const DID =
  /\b(?:moved|checked|called|closed|adjusted|turned|tossed|threw|put|reset|fixed|told|discarded|shut|cleaned|iced)\b.*$/i;

/** What was done about a reading, in the person's words. */
function action(lexed: Lexed): Slots {
  const words = lexed.syms.has('T') ? DID.exec(lexed.text)?.[0].trim().slice(0, 200) : undefined;
  return words === undefined ? {} : { action: words };
}

function reading(lexed: Lexed): Slots {
  const atom = first(lexed, 'T');
  if (atom) return { [atom.unit === 'c' ? 'temp_c' : 'temp_f']: numberOf(atom) };
  const inPlace = find(lexed, /^ (?:about |its |just )?N (?:in|at) (?:the |our )?L /)?.find(
    (each) => each.sym === 'N',
  );
  const cooled = find(lexed, / N (?:after|in|at) (?:Z|W) /)?.[0];
  if (inPlace) return { temp_f: numberOf(inPlace) };
  if (cooled && / (?:cooling|cool|cooled) /.test(lexed.shape)) return { temp_f: numberOf(cooled) };
  const bare = find(
    lexed,
    / (?:L|is|reads|reading|at|says|shows|hit|was|reached) (?:[a-z]+ )?N (?!P|R)/,
  )?.findLast((each) => each.sym === 'N');
  if (bare && lexed.syms.has('L')) return { temp_f: numberOf(bare) };
  const told = find(
    lexed,
    / (?:temp|temps|temperature|holding|held|at|its|is|reads|reading|says|hit|reached|probed|temped|to) (?:[a-z]+ )?N (?!P|R|F|U|A)/,
  )?.findLast((each) => each.sym === 'N');
  return told && /^\d/.test(told.text) && (told.value ?? 0) > 12 ? { temp_f: numberOf(told) } : {};
}

const place = (lexed: Lexed): Slots => {
  const atom = first(lexed, 'L');
  return atom ? { location: nameOf(atom) } : {};
};

function food(lexed: Lexed): Slots {
  const atom =
    first(lexed, 'F') ?? first(lexed, 'R') ?? all(lexed, 'P').find((each) => each.unit !== 'person');
  return atom ? { food: nameOf(atom), ...(atom.sym === 'R' ? recipe(lexed) : {}) } : {};
}

/** "fridge 1 38F, fridge 2 40F": each place with the reading after it. */
function readings(lexed: Lexed): Slots {
  const rows: SlotValue[] = [];
  let place: Atom | undefined;
  for (const [i, atom] of lexed.seen.entries()) {
    if (atom.sym === 'L') place = atom;
    if ((atom.sym !== 'T' && atom.sym !== 'N') || !place || atom.value === undefined) continue;
    const fahrenheit = atom.unit === 'c' ? Math.round((atom.value * 9) / 5 + 32) : atom.value;
    const at = lexed.seen
      .slice(i + 1, i + 3)
      .find(({ moment, sym }) => moment?.time !== undefined || sym === 'L')?.moment;
    rows.push({
      location: nameOf(place),
      temp_f: fahrenheit,
      ...(at?.time === undefined ? {} : { time: at.time }),
    });
    place = undefined;
  }
  return rows.length > 1 ? { readings: rows } : {};
}

/** How long it lasted: "for 3 hours", "70 F in 2 hours", "out from 2 to 5". */
function lasted(lexed: Lexed): number | undefined {
  const long = durationMin(first(lexed, 'Z'));
  if (long !== undefined) return long;
  const after = first(lexed, 'W')?.moment?.offset;
  const minutes = /^\+(\d+)min$/.exec(after ?? '')?.[1];
  if (minutes !== undefined) return Number(minutes);
  const ends = find(lexed, / from (?:N|W) (?:to|until|till) (?:N|W) /)?.flatMap((atom) => hourOf(atom) ?? []);
  const [from, to] = ends ?? [];
  return from === undefined || to === undefined ? undefined : ((to - from + 12) % 12) * 60;
}

const hourOf = ({ sym, value, moment }: Atom): number | undefined => {
  if (moment?.time !== undefined) return Number(moment.time.slice(0, 2)) + Number(moment.time.slice(3)) / 60;
  return sym === 'N' && value !== undefined && value >= 1 && value <= 12 ? value : undefined;
};

function event(lexed: Lexed): Slots {
  const { shape } = lexed;
  if (/ (?:power|outage|electricity) /.test(shape)) return { event: 'power_outage' };
  if (/ (?:delivery|delivered|received|receiving|truck|came in|arrived) /.test(shape))
    return { event: 'receiving' };
  if (
    / (?:cooling|cool|cooled|chilling) | (?:went|dropped|down|fell|gone) from (?:N|T) to (?:N|T) /.test(shape)
  )
    return { event: 'cooling' };
  if (/ (?:out|counter|unrefrigerated|sitting|car|sat|room) /.test(shape) && !/ find out /.test(shape))
    return { event: 'time_out' };
  return {};
}
