import type { Slots } from '../../slots.ts';
import type { Atom } from '../atoms.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first, lastIn } from '../slots/find.ts';
import { avoid, nutrients, sport } from '../slots/names.ts';
import { durationMin, whenText } from '../slots/when.ts';

const EVENT =
  '(?:lift|lifting|practice|game|games|match|training|workout|workouts|race|session|sessions|run|ride|meet|swim|gym|weights|conditioning|competition|tournament|kickoff|halftime|tipoff|warmup|scrimmage|exercise|rehab|bed|S|bus|tip|heat|heats|halves|innings|inning|sets|events|relay|relays|doubleheader|double header|B header|marathon|triathlon|regatta|tourney|invitational|meets|races|matches|tryouts|trial|trials|final|finals|class)';

export const fuel: IntentReader = {
  intent: 'fuel',
  cues: [
    'eat',
    'snack',
    'snacks',
    'P',
    'drink',
    'fuel',
    'recovery',
    'pre',
    'post',
    'before',
    'after',
    'during',
    'between',
    'halftime',
    'meal',
    'breakfast',
    'carb',
    'hydrate',
    'hydration',
    'M',
    'Q',
    'hungry',
    'starving',
    'famished',
    'dying',
    'food',
    'feed',
    'fueling',
    'refuel',
    'pregame',
    'postgame',
    'gap',
    'travel',
    'finished',
    'W',
    'Z',
    'weigh',
    'lift',
    'sweat',
    'races',
    'gels',
  ],
  rules: [
    [
      new RegExp(
        ` ${EVENT} (?:[a-z]+ )*(?:W|Z) .*(?:eat|eats|have|snack|snacks|food|fuel|feed|drink|hungry|recommend) `,
      ),
      8.6,
    ],
    [
      new RegExp(
        ` (?:starving|hungry|famished|dying for|craving|need fuel|need food|need something) .*(?:${EVENT} (?:[a-z]+ )*(?:W|Z)|(?:W|Z) (?:[a-z]+ )*${EVENT}|before ${EVENT}) `,
      ),
      8.6,
    ],
    [
      new RegExp(
        ` (?:W|Z) (?:[a-z]+ ){0,3}(?:before|till|until|to|from) (?:[a-z]+ )*${EVENT} .*(?:eat|have|snack|food|fuel|feed|drink|P) `,
      ),
      8.4,
    ],
    [
      / (?:pregame|postgame|prematch|postmatch|prerace|postrace|prepractice|pregame|pre game|post game|pre match|pre practice|post practice|pre race|post race|pre meet|pre lift|post lift) /,
      7.8,
    ],
    [new RegExp(` between (?:[a-z]+ )*(?:${EVENT}) `), 8.2],
    [
      / (?:Z (?:[a-z]+ )?(?:gap|break|apart|between|turnaround|off)|(?:gap|break|turnaround) (?:[a-z]+ ){0,3}Z) .*(?:eat|feed|fuel|snack|food|have|P|M) /,
      8.6,
    ],
    [
      / (?:eat|feed|fuel|snack|food|P|M) .*(?:Z (?:[a-z]+ )?(?:gap|break|apart|between|turnaround)|(?:gap|break) (?:[a-z]+ ){0,3}Z) /,
      8.4,
    ],
    [
      / M (?:per|an|each|every|a) (?:hour|hr|U|Z|min|h) | (?:carbs?|M|drink|sip) .*(?:during|per hour|an hour|mid) (?:[a-z]+ )*/,
      8.2,
    ],
    [/ (?:fuel|fueling|refuel|refueling) /, 8.2],
    [
      / (?:travel|bus|road|plane|flight) (?:[a-z]+ ){0,2}(?:food|snack|snacks|meal|meals|eats|fuel|P) (?!.*N)/,
      7,
    ],
    [
      / (?:food|snacks?|eat|meal) (?:[a-z]+ )*(?:for|on) (?:[a-zQZN]+ )*(?:bus|trip|ride|plane|flight|drive|road) (?!.*N P)/,
      7,
    ],
    [
      / how much (?:M|water|fluid|carbs?) (?:do|should|does|would|will) (?:i|we|he|she|they|athletes|P) (?:[a-z]+ )*(?:need|eat|get|have|drink|take) /,
      7.6,
    ],
    [
      new RegExp(
        ` (?:just )?(?:finished|done with|after|done|got done with|coming from|left) (?:[a-z]+ ){0,2}${EVENT} (?:[a-z]+ )*(?:R|P|F|what|eat|or|snack|M) `,
      ),
      7.8,
    ],
    [
      new RegExp(
        ` (?:snack|eat|food|meal|something|smth|sth|need) (?:[a-z]+ ){0,4}(?:before|after|during|between) (?:[a-z]+ ){0,3}${EVENT} `,
      ),
      8.3,
    ],
    [new RegExp(` ${EVENT} (?:[a-z]+ )?(?:W|Z) what (?:[a-z]+ )*`), 6.6],

    [
      new RegExp(
        ` (?:eat|snack|snacks|drink|have|fuel|food|meal|meals|breakfast|P|hydrate|recovery|M|carbs?) .*(?:before|after|during|between|in|post|pre|at|for|prior to) (?:[a-zWS]+ ){0,3}${EVENT} `,
      ),
      8,
    ],
    [
      new RegExp(
        ` (?:before|after|during|between|post|pre|at) (?:[a-zWS]+ ){0,3}${EVENT} .*(?:eat|snack|snacks|drink|fuel|food|meal|M|P) `,
      ),
      7.8,
    ],
    [new RegExp(` Z (?:[a-z]+ )?(?:before|after|till|until|to|prior) (?:[a-z]+ )*${EVENT} `), 6.2],
    [/ (?:should|do|can|to|shall|must) (?:[a-z]+ )?(?:eat|drink|snack) /, 5],
    [/ what (?:[a-z]+ )*(?:eat|drink|snack on|fuel) /, 6],
    [
      / how much (?:M )?(?:[a-z]+ )*(?:eat|drink|need|have|get) (?:[a-z]+ )*(?:before|after|during|Q|in|per|a|each) /,
      7.5,
    ],
    [/ (?:Q|weigh) .*M .*(?:after|before|during|day|need|eat) /, 7.5],
    [/ M .*(?:after|before|during|whole day|per day|a day) .*Q /, 7.5],
    [new RegExp(` (?:pre|post) (?:${EVENT} )?(?:meal|meals|snack|snacks|fuel|food|P|ideas|recovery)?`), 6.5],
    [
      / (?:recovery|recover|refuel|fueling|carb load|carb loading|carbo load|hydrate|hydration|rehydrate) /,
      6.6,
    ],
    [/ (?:i weigh|im Q|i am Q|weigh Q|at Q) /, 6.5],
    [/^ Q (?:[a-z]+ )*(?:what|how|eat) /, 5.5],
    [/ (?:halftime|half time) /, 6],
    [/ (?:drink|hydrate|water|fluid|fluids|F) .*(?:practice|game|heat|T|out) /, 6.3],
    [
      / (?:snacks?|food|eat|P) (?:[a-z]+ )*for (?:[a-z]+ )*(?:bus|trip|plane|flight|travel|road)(?: ride)? (?!.*N)/,
      6.8,
    ],
    [/ M (?:during|before|after) /, 7.2],
    [/ how (?:many|much) M Z (?:on|in|during|for) /, 8.4],
    [new RegExp(` during (?:[a-z]+ )?(?:Z )?${EVENT} .*(?:M|eat|drink|carbs|gels?) `), 8.4],
    [new RegExp(` Z (?:between|btwn) ${EVENT} `), 8.2],
    [new RegExp(` (?:P|snacks?) (?:before|after|during|for|post|pre) (?:[a-z]+ )?${EVENT} .*Q `), 8.4],
    [
      new RegExp(
        ` (?:finished|done with|after|just had|coming off|got out of) (?:[a-z]+ ){0,2}${EVENT} .*(?:Q|what|eat|now) `,
      ),
      7.4,
    ],
    [/ hungry /, 5],
  ],
  slots(lexed) {
    return {
      ...phase(lexed),
      ...timing(lexed),
      ...weight(lexed),
      ...lost(lexed),
      ...nutrients(lexed),
      ...event(lexed),
      ...sport(lexed),
      ...heat(lexed),
      ...avoid(lexed),
    };
  },
};

function phase(lexed: Lexed): Slots {
  const { shape } = lexed;
  if (/ (?:between|doubleheader|double header|B header|back to back|gap|apart) /.test(shape))
    return { phase: 'between' };
  if (/ (?:bus|travel|travelling|traveling|plane|flight|road trip) /.test(shape)) return { phase: 'travel' };
  if (
    / (?:all day|whole day|full day|per day|a day|each day|daily|carb load|loading|throughout|tourney|tournament) /.test(
      shape,
    ) &&
    !/ (?:after|during) /.test(shape)
  )
    return { phase: 'all_day' };
  if (
    / (?:during|halftime|half time|mid|per hour|an hour into|in the middle of) |^ during /.test(shape) &&
    !/ (?:after|before) /.test(shape)
  )
    return { phase: 'during' };
  if (
    / (?:after|post|recovery|recover|refuel|following|finished|done|postgame|postmatch|postrace|coming off|got out of) /.test(
      shape,
    )
  )
    return { phase: 'post' };
  if (
    / (?:before|pre|prior|until|till|pregame|prematch|prerace|prepractice) /.test(shape) ||
    new RegExp(` ${EVENT} (?:[a-z]+ ){0,2}(?:W|Z) `).test(shape) ||
    / (?:game|match|practice|race|kickoff) (?:[a-z]+ )*W /.test(shape)
  )
    return { phase: 'pre' };
  if (/ (?:during|halftime|half time|mid|while|in practice|in the game|on the bike) /.test(shape))
    return { phase: 'during' };
  return startsLater(lexed) ? { phase: 'pre' } : {};
}

/** "Lift in an hour": the event is still to come. */
const startsLater = (lexed: Lexed): boolean =>
  all(lexed, 'W').some((atom) => atom.moment?.offset?.startsWith('+'));

function timing(lexed: Lexed): Slots {
  const lengths = all(lexed, 'Z');
  const before =
    find(lexed, / Z (?:[a-zS]+ ){0,2}(?:before|until|till|prior|to|out|away|from now|from) /)?.[0] ??
    find(lexed, / (?:pregame|pre|before) (?:[a-z]+ ){0,3}Z /)?.at(-1);
  const offset = all(lexed, 'W').find((atom) => atom.moment?.offset?.startsWith('+'))?.moment?.offset;
  const gap = find(
    lexed,
    / (?:Z (?:[a-z]+ )?(?:gap|between|apart|break)|(?:gap|break) (?:[a-z]+ )*Z) /,
  )?.find((atom) => atom.sym === 'Z');
  const between = / between /.test(lexed.shape) ? (gap ?? first(lexed, 'Z')) : gap;
  const during = lengths.find((atom) => atom !== before && atom !== between);
  const time = whenText(
    all(lexed, 'W')
      .flatMap((atom) => atom.moment ?? [])
      .filter((moment) => moment.offset === undefined),
  );
  return {
    ...minutes('time_to_event_min', before),
    ...(offset && !before
      ? { time_to_event_min: Number.parseFloat(offset) * (offset.endsWith('d') ? 1440 : 1) }
      : {}),
    ...minutes('gap_min', between),
    ...minutes('duration_min', during),
    ...(time === undefined
      ? {}
      : /^\d\d:\d\d$/.test(time)
        ? { event_time: time }
        : { event_time: time, when: time }),
  };
}

const minutes = (name: string, atom: Atom | undefined): Slots => {
  const value = durationMin(atom);
  return value === undefined ? {} : { [name]: value };
};

/** Body weight in kg to one decimal; 1 lb is 0.45359237 kg (NIST HB 44 App. C). */
function weight(lexed: Lexed): Slots {
  const atom = all(lexed, 'Q').find(
    (each) =>
      (each.unit === 'kg' && (each.value ?? 0) >= 30) || (each.unit === 'lb' && (each.value ?? 0) >= 70),
  );
  if (atom?.value === undefined) {
    const bare = lastIn(lexed, / (?:weigh|weight|weighing) (?:[a-z]+ )*N /, 'N');
    return bare?.value !== undefined && bare.value > 30
      ? { weight_kg: bare.value >= 130 ? toKg(bare.value) : bare.value }
      : {};
  }
  return { weight_kg: atom.unit === 'lb' ? toKg(atom.value) : atom.value };
}

/** "Lost 1.2 kg": sweat, for what to drink after. */
function lost(lexed: Lexed): Slots {
  const atom = lastIn(lexed, / (?:lost|lose|down|sweated) (?:[a-z]+ ){0,2}Q /, 'Q');
  if (atom?.value === undefined || !/^(?:kg|lb)$/.test(atom.unit ?? '') || atom.value > 12) return {};
  return { lost_kg: atom.unit === 'lb' ? toKg(atom.value) : atom.value };
}

const toKg = (pounds: number): number => Math.round(pounds * 0.45359237 * 10) / 10;

const EVENT_WORD = new RegExp(` ${EVENT} `);

function event(lexed: Lexed): Slots {
  const word = EVENT_WORD.exec(lexed.shape)?.[0].trim();
  return word === undefined || word === 'S' ? {} : { event: word.replace(/^lifting$/, 'lift') };
}

function heat(lexed: Lexed): Slots {
  const atom = first(lexed, 'T');
  if (atom?.value === undefined) return {};
  return { air_temp_f: atom.unit === 'c' ? Math.round((atom.value * 9) / 5 + 32) : atom.value };
}
