import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { first } from '../slots/find.ts';
import { knownRecipe, sport } from '../slots/names.ts';
import { when } from '../slots/when.ts';
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
  ],
  rules: [
    [/ (?:schedule|calendar) /, 6],
    [/^ (?:[a-z]+ ){0,3}(?:schedule|calendar) (?:[a-zW]+ ){0,3}\?? ?$/, 7],
    [new RegExp(` (?:when|whens|what time) (?:[a-zWS]+ ){0,6}${EVENT} `), 7.5],
    [/ (?:when|who) (?:do|are|is|does) (?:[a-z]+ ){0,2}(?:play|playing) /, 8],
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
    [/ how many (?:[a-z]+ )?(?:games|matches|meets|races|events) /, 8],
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
      / (?:is|are|was|has) (?:[a-zW]+ )*(?:game|games|match|practice) (?:[a-z]+ )*(?:cancelled|canceled|postponed|moved|on) /,
      8,
    ],
    [
      / (?:do we|are we|is there|do you|have we|any) (?:[a-z]+ )*(?:games?|match|matches|play|meet|playing) /,
      7,
    ],
  ],
  slots: (lexed) => ({
    ...ask(lexed),
    ...when(lexed),
    ...sport(lexed),
    ...against(lexed),
    ...(/ (?:export|download|ics|ical|subscribe) /.test(lexed.shape) ? { output: 'ics' } : {}),
  }),
};

/** What is told about a game: a new one, a move, an import. */
export const game: IntentReader = {
  intent: 'game',
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
    [
      / (?:game|match|meet|kickoff) (?:[a-z]+ ){0,3}(?:moved|cancelled|canceled|postponed|rescheduled|pushed|delayed) /,
      7.5,
    ],
    [/ (?:S|we|they|game) (?:[a-z]+ )?(?:play|plays|playing) (?:[a-z]+ )*(?:W|at|vs|against) /, 6],
    [/ (?:kickoff|tipoff|departure|bus) (?:[a-z]+ )?(?:is |now |at |moved |changed )+(?:[a-z]+ )*W /, 7],
  ],
  slots: (lexed) => {
    const source = { ...imported(lexed), ...aboutCalendars(lexed) };
    if (source.action !== undefined) return source;
    return {
      ...action(lexed),
      ...gameTimes(lexed),
      ...sport(lexed),
      ...against(lexed),
      ...side(lexed),
      ...fed(lexed),
      ...knownRecipe(lexed),
    };
  },
};

function ask({ shape }: Lexed): Slots {
  if (/ (?:home or away|away or home) | (?:is|are) .*(?:home|away) /.test(shape)) return { ask: 'home_away' };
  if (/ (?:how many (?:[a-zP]+ )?(?:Z|days|weeks)|how long|days until) /.test(shape))
    return { ask: 'days_until' };
  if (/ (?:how many|number of) /.test(shape)) return { ask: 'count' };
  if (/ (?:cancelled|canceled|called off|still on|postponed) /.test(shape)) return { ask: 'cancelled' };
  if (/ (?:change|changed|changes|moved|rescheduled) /.test(shape)) return { ask: 'changes' };
  if (/ (?:leave|leaves|leaving|depart|departs|departure) /.test(shape)) return { ask: 'departure' };
  if (
    / (?:what time|when) .*(?:kickoff|kick|start|starts|tipoff|begin|game W|W game) | what time /.test(shape)
  )
    return { ask: 'start_time' };
  if (/ (?:next|when|who|whos) /.test(shape)) return { ask: 'next' };
  return {};
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
