import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { daysAsked } from '../slots/days-asked.ts';
import { first } from '../slots/find.ts';
import { knownRecipe, sport } from '../slots/names.ts';
import { against, fed, gameTimes, side } from './game-details.ts';

const EVENT =
  '(?:games?|match|matches|meet|meets|tournament|scrimmage|race|races|kickoff|tipoff|kick|bus|we play|do we play|play|opponent|schedule|S)';

/** Questions about the calendar. */
export const schedule: IntentReader = {
  intent: 'schedule',
  cues: [
    'schedule',
    'game',
    'games',
    'match',
    'matches',
    'meet',
    'kickoff',
    'bus',
    'play',
    'home',
    'away',
    'on',
    'calendar',
    'leave',
    'tournament',
    'happening',
    'prep',
    'export',
    'tipoff',
    'departure',
    'kick',
    'opponent',
    'week',
    'race',
    'S',
    'playing',
    'playin',
    'travel',
    'plays',
    'leaving',
    'meets',
    'tip',
    'pitch',
    'puck',
    'faceoff',
    'night',
    'homecoming',
    'opener',
    'look',
    'looking',
  ],
  rules: [
    [/ (?:schedule|calendar) /, 6],
    [/^ (?:[a-z]+ ){0,3}(?:schedule|calendar) (?:[a-zW]+ ){0,3}\?? ?$/, 7],
    [new RegExp(` (?:when|whens|what time) (?:[a-zWS]+ ){0,6}${EVENT} `), 7.5],
    [/ (?:when|who|whos|whom) (?:[a-zSP]+ ){0,5}(?:play|plays|playing|playin|facing|against) /, 8.2],
    [
      / (?:what|how) (?:does|is|are|do|s) .*(?:week|weekend|month|W|schedule|slate) (?:[a-z]+ ){0,3}(?:look|looking|looks) /,
      8.2,
    ],
    [
      /^ (?:whats |what is |who is |whos )?(?:on )?(?:the )?(?:tip ?off|tip off|first pitch|puck drop|kick ?off|face ?off|start) (?:time )?(?:of |for |on |at )?(?:the )?.*\? $/,
      7.8,
    ],
    [
      / (?:tip off|tipoff|first pitch|puck drop|kick off|kickoff|face off|faceoff|start) time | start time (?:of|for) /,
      7.8,
    ],
    [/ (?:what time|when) (?:[a-zS]+ ){0,4}(?:leaving|leave|tip off|tips off|kick off|puck) /, 8.2],
    [
      / (?:days|weeks|sleeps|long) (?:til|till|until|to|before|till the) (?:the )?(?:[a-zS]+ ){0,4}(?:game|match|meet|night|opener|homecoming|season|tournament|kickoff|tipoff|championship|playoffs?) /,
      8.4,
    ],
    [/ next (?:home|away) (?:game|date|match|one|meet|stand|contest) /, 8.2],
    [
      /^ (?:do|are|when do|where do) we (?:travel|traveling|travelling|on the road|away) (?:[a-z]+ )*(?:W|this|next) /,
      7.5,
    ],
    [/ (?:homecoming|senior night|home opener|season opener) (?:[a-z]+ )*(?:game|W|\?|begin|start|$)/, 6],
    [new RegExp(` next (?:[a-zS]+ )?${EVENT} `), 6.5],
    [/^ (?:list |show |all |the |our |upcoming |my )*(?:S )?(?:games|matches|meets) \?? ?$/, 7],
    [/^ what (?:[a-z]+ ){0,4}prep (?:this |next |for |on |the )*W \?? ?$/, 7],
    [/ (?:home or away|away or home) /, 8.5],
    [
      / (?:is|are) (?:[a-zW]+ )*(?:game|match|we|it) (?:[a-zW]+ )*(?:home|away|cancelled|canceled|still on|on) /,
      8,
    ],
    [/ (?:bus|we|team|they) (?:[a-z]+ )?(?:leave|leaving|depart|departs|leaves) /, 6],
    [
      / (?:when|what time) (?:[a-zW]+ )*(?:leave|depart|departure|leaves|kick|kickoff|start|starts|begin) /,
      8,
    ],
    [/ how many (?:[a-zS]+ ){0,3}(?:games|matches|meets|races|events|contests) /, 9],
    [/ how many (?:[a-zP]+ )?(?:Z|days|weeks) (?:[a-z]+ )*(?:until|till|to|before|til) /, 8],
    [
      / (?:whats|what is|anything|what|whos) (?:[a-z]+ )?(?:on|happening|going on|up|coming up|scheduled|planned) (?:[a-z]+ )*(?:W)? ?/,
      4.5,
    ],
    [
      / (?:whats|what is|anything|what do we have) (?:[a-z]+ )?(?:on|happening|going on|coming up|scheduled|planned) (?:[a-z]+ )*W /,
      7,
    ],
    [
      / (?:any|did|has|have|what) (?:[a-z]+ )*(?:change|changed|changes|moved|rescheduled) (?:[a-z]+ )*(?:schedule|game|games|calendar|W)? ?/,
      5.5,
    ],
    [/ (?:any|did) (?:[a-z]+ )*(?:change|changes|changed) .*(?:schedule|calendar|games?) /, 8],
    [
      / (?:is|are|was|has|did|hear|heard|true) (?:[a-zWS]+ )*(?:game|games|match|practice|meet|kickoff|S) (?:[a-zW]+ )*(?:cancelled|canceled|called off|postponed|moved|move|change|happening|happen|rained out|on) /,
      8.8,
    ],
    [
      / (?:do we|are we|is there|do you|have we|any) (?:[a-z]+ )*(?:games?|match|matches|play|meet|playing) /,
      7,
    ],
  ],
  slots: (lexed) => ({
    ...ask(lexed),
    ...named(lexed),
    ...daysAsked(lexed),
    ...sport(lexed),
    ...against(lexed),
    ...(/ (?:export|download|ics|ical|subscribe) /.test(lexed.shape) ? { output: 'ics' } : {}),
  }),
};

/** A question changes no game: "game cancelled?", "bus leaves at 8?"; "can you add a game …?" is a request. */
const GAME_ASKED =
  /^(?!.* (?:add|move|cancel|delete|remove|import|upload|sync|reschedule|change|push|put|load) (?:[a-zWS]+ ){0,4}(?:game|match|meet|scrimmage|calendar|H|to|it) )(?!.* (?:H|calendars?) ).*(?: \? $|^ (?:is|are|was|were|did|does|do|has|when|whens|what|whats|who|how|any|which|where) )/;

/** What is told about a game: a new one, a move, an import. */
export const game: IntentReader = {
  intent: 'game',
  never: GAME_ASKED,
  cues: [
    'game',
    'games',
    'match',
    'H',
    'import',
    'kickoff',
    'meet',
    'tipoff',
    'vs',
    'against',
    'cancelled',
    'canceled',
    'postponed',
    'rescheduled',
    'tournament',
    'calendar',
    'calendars',
    'ics',
    'scrimmage',
    'schedule',
    'S',
    'departure',
    'bus',
    'play',
  ],
  rules: [
    [/ (?:import|upload|load|sync) /, 8],
    [/ H /, 7],
    [/ (?:list|show|which|our|my) (?:[a-z]+ ){0,2}calendars? /, 7.2],
    [/ (?:remove|delete|forget|drop|unsubscribe) (?:[a-zS]+ ){0,3}calendar /, 7.5],
    [/^ (?:S )?(?:game|match|meet|scrimmage) (?!.* \? ).*W /, 6.8],
    [
      /^ (?!is |was |are |did |has |when |what |any )(?:the |our |new |add |move |change |update |cancel |[a-zWS]+ ){0,4}(?:game|match|meet|kickoff|tipoff|scrimmage) (?:[a-zWS]+ )*(?:moved|changed|cancelled|canceled|postponed|rescheduled|pushed|delayed|is off|bumped|now|starts) /,
      8.5,
    ],
    [
      / (?:add|new|schedule|create|put|move|reschedule|cancel|delete|remove|change) (?:[a-zWS]+ ){0,4}(?:game|match|meet|scrimmage|tournament|kickoff) /,
      8.2,
    ],
    [/^ (?:S )?(?:game|match|meet|scrimmage) (?:[a-z]+ )?(?:W |vs |against |away |home )/, 8],
    [/ (?:vs|against|versus) /, 5],
    [/^ (?:the )?S (?:game |match |meet )?(?:at|vs|against|versus) (?:the )?[a-z]+ (?:[a-z]+ )?W /, 7.6],
    [
      / (?:game|match|meet|kickoff) (?:[a-z]+ ){0,3}(?:moved|cancelled|canceled|postponed|rescheduled|pushed|delayed) /,
      7.5,
    ],
    [/ (?:S|we|they|game) (?:[a-z]+ )?(?:play|plays|playing) (?:[a-z]+ )*(?:W|at|vs|against) /, 6],
    [/ (?:kickoff|tipoff|departure|bus) (?:[a-z]+ )?(?:is |now |at |moved |changed )+(?:[a-z]+ )*W /, 7],
  ],
  slots: (lexed) => {
    const source = lexed.syms.has('H') ? imported(lexed) : { ...imported(lexed), ...aboutCalendars(lexed) };
    if (source.action !== undefined) return source;
    return {
      ...action(lexed),
      ...named(lexed),
      ...gameTimes(lexed),
      ...sport(lexed),
      ...against(lexed),
      ...side(lexed),
      ...fed(lexed),
      ...knownRecipe(lexed),
    };
  },
};

function ask({ shape, said }: Lexed): Slots {
  if (
    / (?:home or away|away or home) | (?:is|are) (?!.*how many).*(?:home|away) | where (?:do|are) (?:[a-z]+ )*play/.test(
      shape,
    )
  )
    return { ask: 'home_away' };
  if (
    / (?:how many (?:[a-zP]+ )?(?:Z|days|weeks|sleeps)|how long|(?:days|weeks|Z) (?:until|til|till|to|before)) /.test(
      shape,
    )
  )
    return { ask: 'days_until' };
  if (/ (?:how many|number of) /.test(shape)) return { ask: 'count' };
  if (
    / (?:cancelled|canceled|called off|still on|postponed|rained out|(?:not|still) happen(?:ing)?|happening|off or on|on or off) /.test(
      shape,
    )
  )
    return { ask: 'cancelled' };
  if (
    / (?:change|changed|changes|moved|rescheduled|(?:did|has|have) .*move|new time|different time) /.test(
      shape,
    )
  )
    return { ask: 'changes' };
  if (/ (?:leave|leaves|leaving|depart|departs|departure) /.test(shape)) return { ask: 'departure' };
  if (
    / (?:what time|when|whens) .*(?:kickoff|kick|start|starts|tipoff|tip off|tips off|begin|begins|puck|first pitch|face off|faceoff|game W|W game) | what time | (?:start|tip off|tipoff|kickoff|kick off|game) time |(?:first pitch|puck drop|tip off|tipoff|face off|faceoff|kickoff) (?:[a-z]+ )*(?:W |\?)/.test(
      shape,
    )
  )
    return { ask: 'start_time' };
  if (/ next (?:N|Z|[a-z]+) ?(?:days|weeks|Z)? $/.test(shape) && / next [a-z0-9]+ (?:day|week)s /.test(said))
    return {};
  if (/ (?:next|when|who|whos) /.test(shape)) return { ask: 'next' };
  return {};
}

const SPECIAL =
  /\b(homecoming|senior (?:night|day)|(?:home|season) opener|rivalry|alumni|parents'? (?:weekend|day)|championship|playoffs?|semi ?finals?|spring game)\b/i;

/** A game by the name it goes by: "homecoming", "senior night". */
function named({ text }: Lexed): Slots {
  const name = SPECIAL.exec(text)?.[1];
  return name === undefined ? {} : { game: name.toLowerCase() };
}

function imported(lexed: Lexed): Slots {
  const url = first(lexed, 'H');
  if (url) return { action: 'import', url: url.text.replace(/[>)\].,]+$/, '') };
  const webcal = /\bwebcals?:\/\/\S+/i.exec(lexed.text)?.[0];
  if (webcal !== undefined) return { action: 'import', url: webcal.replace(/[>)\].,]+$/, '') };
  const file =
    /\b(?:import|upload|load|sync)\s+(?:the\s+|file\s+|calendar\s+)*["']?(.+?\.(?:ics|ical))\b/i.exec(
      lexed.text,
    )?.[1] ?? /(?:^|\s)["']?(\S+\.(?:ics|ical))\b/i.exec(lexed.text)?.[1];
  if (file !== undefined) return { action: 'import', file };
  return / (?:import|upload|sync) /.test(lexed.shape) ? { action: 'import' } : {};
}

/** "list calendars", "forget calendar Soccer". */
function aboutCalendars({ shape, text }: Lexed): Slots {
  if (/ (?:remove|delete|forget|drop|unsubscribe) (?:[a-zS]+ ){0,3}calendar /.test(shape)) {
    const name =
      /calendar\s+(.+)$/i.exec(text)?.[1] ??
      /(?:forget|drop|unsubscribe|remove|delete)\s+(?:the\s+)?(.+?)\s+calendar/i.exec(text)?.[1];
    return { action: 'forget', ...(name === undefined ? {} : { calendar: name.trim() }) };
  }
  return / (?:list|show|which|our|my) (?:[a-z]+ ){0,2}calendars? /.test(shape) &&
    !/ (?:cancel|move|changed?) /.test(shape)
    ? { action: 'calendars' }
    : {};
}

function action({ shape }: Lexed): Slots {
  if (/ (?:cancelled|canceled|cancel|off|delete|remove) /.test(shape)) return { action: 'cancel' };
  if (/ (?:moved|move|changed|change|rescheduled|postponed|pushed|delayed|bumped|now) /.test(shape))
    return { action: 'move' };
  return / (?:add|new|create|W) /.test(shape) ? { action: 'add' } : {};
}
