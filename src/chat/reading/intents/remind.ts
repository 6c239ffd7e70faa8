import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { BEFORE_GAME, gameNamed, isBeforeGame, minutesBeforeGame } from '../slots/before-game.ts';
import { find, first } from '../slots/find.ts';
import { numberOf } from '../slots/numbers.ts';
import { when, whenText } from '../slots/when.ts';

export const remind: IntentReader = {
  intent: 'remind',
  cues: [
    'remind',
    'reminder',
    'reminders',
    'timer',
    'alarm',
    'ping',
    'snooze',
    'forget',
    'W',
    'nudge',
    'alert',
    'tell',
    'done',
    'got',
    'mine',
    'J',
    'remember',
    'reminding',
    'reminded',
    'let',
    'text',
    'message',
    'notify',
  ],
  rules: [
    [/ (?:remind(?! (?:me|us) (?:again )?(?:what|how|which|who|where|why|when))|reminder|reminders) /, 9],
    [/ (?:reminded|reminding) /, 9],
    [/ remember (?:me|us) (?:W|Z|to|at|about|for|in) /, 9],
    [
      / (?:ping|nudge|alert|notify|buzz|poke|text|message) (?:me|us|everyone|everybody|the [a-z]+|P) (?:[a-z]+ ){0,4}(?:W|Z|to) /,
      8.7,
    ],
    [
      /^ every (?:weekdays?|weekends?|shift|morning|night) (?:at )?(?:W )?(?:to )?(?:log|record|take|check|count|clean|pack|prep|wash|label|sweep|wipe|rotate|send|post|order|pull|thaw|set|do) /,
      8.8,
    ],
    [/ (?:timer|alarm) /, 8.5],
    [
      /^ W (?:at )?W (?:to )?(?:log|record|take|check|count|clean|pack|prep|wash|label|sweep|wipe|rotate|send|post|order|pull|thaw|set|do) /,
      8.8,
    ],
    [/ snooze /, 9],
    [/ stop (?:reminding|bugging|pinging|telling|texting) (?:me|us|the|everyone) /, 9],
    [/^ (?:in |after )?(?:Z|W) (?:[a-z]+ )?(?:tell|ping|nudge|text|message) (?:me|us|the|everyone) to /, 9],
    [
      / (?:ping|nudge|alert|notify|tell|text|message) (?:me|us|everyone|everybody|the|all|P|[a-z]+) (?:[a-z]+ )*W /,
      8.5,
    ],
    [
      / (?:dont let|make sure|let) (?:me|us|i|we|P|the) (?:[a-z]+ )*(?:forget|remember|know(?! (?:what|how|if|when|which|where|who|whats))) /,
      8.6,
    ],
    [
      /^ (?:W )+(?:[a-z]+ )*(?:order|check|soak|thaw|clean|pack|prep|call|count|buy|wash|label|make|bake) /,
      5.5,
    ],
    [/^ every /, 3],
    [/ J /, 9.2],
    [/^ (?:ok |all |its |were |im )*done $/, 6],
    [/^ (?:ok |i |ive |we |weve )*(?:got|have) (?:it|this|that|this one) $|^ (?:its )?mine $/, 6],
  ],
  slots(lexed) {
    const act = action(lexed);
    const code = first(lexed, 'J');
    return {
      ...moment(lexed),
      ...(code ? { reminder: code.text.toUpperCase() } : {}),
      ...(code || act.action === 'list' || act.action === 'done' || act.action === 'take' ? {} : task(lexed)),
      ...act,
      ...audience(lexed),
      ...(/\bevery\b|\beach (?:game|match|meet|day|mon|tue|wed|thu|fri|sat|sun|morning|week)|\bdaily\b|\bweekly\b|\bnightly\b|\b(?:mon|tues|wednes|thurs|fri|satur|sun)days\b/i.test(
        lexed.text,
      )
        ? { recurring: true }
        : {}),
    };
  },
};

function moment(lexed: Lexed): Slots {
  const minutes = isBeforeGame(lexed.text)
    ? (find(lexed, / Z before /)?.[0]?.value ?? minutesBeforeGame(lexed.text))
    : undefined;
  if (minutes !== undefined)
    return {
      ...gameNamed(lexed.text),
      when: `game -${minutes % 1440 === 0 ? `${minutes / 1440}d` : minutes % 60 === 0 ? `${minutes / 60}h` : `${minutes}min`}`,
    };
  const said = movedTo(lexed) ?? when(lexed);
  const days = EVERY.exec(lexed.text)?.[1];
  if (days !== undefined) return { ...said, when: `every ${daysOf(days)}${timeOf(said.when)}` };
  if (typeof said.when === 'string') {
    if (said.when.startsWith('game ')) return { ...gameNamed(lexed.text), ...said };
    // An hour alone is today's; the answer asks where it has passed.
    return /^\d\d:\d\d$/.test(said.when) ? { ...said, when: `today ${said.when}` } : said;
  }
  const length = first(lexed, 'Z');
  return length && typeof numberOf(length) === 'number' ? { when: `+${numberOf(length)}min` } : {};
}

/** "move my Monday reminder to Tuesday 10:00": the day it has now is no time to come. */
function movedTo(lexed: Lexed): Slots | undefined {
  const said = find(
    lexed,
    / (?:move|change|reschedule|push|shift|bump) (?:[a-z]+ )*W (?:[a-z]+ )*to (?:W )+/,
  );
  const to = said?.findLastIndex(({ sym }) => sym === 'to');
  if (said === undefined || to === undefined) return undefined;
  const text = whenText(said.slice(to).flatMap(({ moment }) => moment ?? []));
  return text === undefined ? undefined : { when: text };
}

const DAY = '(?:mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat|sun)(?:day|nesday|rsday|urday|sday)?s?';
/** "every weekday", "every tue and thu", "each mon, wed and fri": more days than one. */
const EVERY = new RegExp(
  `\\b(?:every|each)\\s+(weekdays?\\b|weekends?\\b|${DAY}(?:\\s*(?:,|and|&|\\/)+\\s*(?:every\\s+)?${DAY})+\\b)`,
  'i',
);

function daysOf(said: string): string {
  if (/^weekday/i.test(said)) return 'mon,tue,wed,thu,fri';
  if (/^weekend/i.test(said)) return 'sat,sun';
  return [...said.toLowerCase().matchAll(/\b(?:mon|tue|wed|thu|fri|sat|sun)/g)].map(([day]) => day).join(',');
}

const timeOf = (when: unknown): string => {
  const time = /\d\d:\d\d/.exec(String(when ?? ''))?.[0];
  return time === undefined ? '' : ` ${time}`;
};

function action({ shape }: Lexed): Slots {
  if (
    / (?:cancel|delete|remove|clear|stop|kill|drop|turn off) (?:[a-z]+ )*(?:reminders?|timers?|alarms?|reminding) /.test(
      shape,
    )
  )
    return { action: 'cancel' };
  if (
    / (?:list|show|what|which|whats|see|all|any) (?:[a-z]+ )*(?:reminders?|timers?|alarms?) |^ reminders? \?? ?$/.test(
      shape,
    )
  )
    return { action: 'list' };
  if (/ snooze /.test(shape)) return { action: 'snooze' };
  if (
    / (?:got|have|take|taking) (?:it |this |that )?(?:J |$)| J (?:is )?mine |^ (?:its )?mine |^ (?:got|have) J /.test(
      shape,
    )
  )
    return { action: 'take' };
  if (/(?:^| )done J | J (?:is )?done |^ (?:ok |all |its |were |im )*done $/.test(shape))
    return { action: 'done' };
  if (/ (?:cancel|delete|remove|stop|kill|clear|drop|turn off) /.test(shape)) return { action: 'cancel' };
  return / (?:move|change|reschedule|push|shift|bump) (?:[a-zW]+ )*(?:reminders?|timers?|alarms?|J) /.test(
    shape,
  )
    ? { action: 'move' }
    : {};
}

const AUDIENCE =
  /\b(?:remind|ping|nudge|alert|notify|tell|text|message|let|make sure|reminder for)\s+(?:the\s+|all\s+(?:the\s+)?|whole\s+)*(me|us|everyone|everybody|interns?|team|staff|dietitian|kitchen|coach(?:es)?|crew|[a-z]+ staff)\b/i;

function audience(lexed: Lexed): Slots {
  const whom = AUDIENCE.exec(lexed.text)?.[1]?.toLowerCase();
  return whom === undefined ? {} : { audience: whom };
}

const WHOM =
  '(?:me|us|everyone|everybody|interns?|team|staff|dietitian|kitchen|coach(?:es)?|crew|girls|guys|athletes|players|captains?)';
/** The asking itself, wherever it stands: what comes before it may be a reason, what comes after it is the task. */
const ASKING = [
  `\\b(?:remind(?:ed|ers?|ing)?|rmind|remeber|remember(?=\\s+(?:me|us)))\\b(?:\\s+for)?(?:\\s+(?:the|all|my|our|whole))*(?:\\s+${WHOM}\\b)?`,
  `\\b(?:don'?t\\s+let|make\\s+sure|let)\\b(?:\\s+(?:the|all|my|our|whole))*(?:\\s+(?:i|we|${WHOM})\\b)?(?:\\s+(?:don'?t|not))?(?:\\s+(?:to\\s+)?(?:know|forget|remember)s?\\b)?`,
  `\\b(?:timer|alarm|ping|nudge|alert|notify|tell|text|message|snooze|buzz|poke)\\b(?:\\s+for)?(?:\\s+(?:the|all|my|our|whole))*(?:\\s+${WHOM}\\b)?`,
].map((pattern) => new RegExp(pattern, 'i'));
const LEAD =
  /^(?:(?:hey|hi|pls|please|can|could|would|will|u|you|also|ok|and|so|i need|i want|i would like|to be)\s+)*(?:(?:set|add|create|make|put)\s+)?(?:an?\s+)?/i;
const TIME = new RegExp(
  `\\b(?:(?:in|on|at|by|around|this|next|every|each|for|the)\\s+)*(?:${DAY}|today|tonight|tomorrow|tmrw|tmr|tomorow|yesterday|daily|noon|midnight|\\d{1,2}:\\d\\d(?:\\s*[ap]\\.?m\\b\\.?)?|\\d{1,2}\\s*[ap]m\\b|\\d{1,2}\\/\\d{1,2}(?:\\/\\d+)?|\\d{4}-\\d\\d-\\d\\d|(?:\\+|in\\s+)?(?:an?|half an|one|two|three|four|five|six|ten|fifteen|twenty|thirty|forty[ -]five|ninety|\\d+(?:\\.\\d+)?)\\s*(?:min(?:ute)?s?|hours?|hrs?|h|days?)\\b(?:\\s+and a half)?(?:\\s+from now)?(?:\\s+${BEFORE_GAME})?|(?:day|night|morning) ${BEFORE_GAME}|game\\s*-\\s*\\d+\\s*(?:d|h|min)|(?:every|each|this)\\s+(?:day|morning|evening|night|afternoon|week)|morning|at\\s+\\d{1,2}(?!\\d))\\b`,
  'giu',
);

/** What is left when the asking and the time are taken away. */
function task(lexed: Lexed): Slots {
  const plain = bareHours(lexed).reduce(
    (text, hour) => text.replace(new RegExp(`(?:\\b(?:at|by|around)\\s+)?\\b${hour}\\b`, 'i'), ' '),
    lexed.text.replace(EVERY, ' ').replace(TIME, ' '),
  );
  const said = ASKING.map((pattern) => pattern.exec(plain)).find((match) => match !== null);
  const after = said ? cleaned(plain.slice(said.index + said[0].length)) : '';
  const rest = after.length > 2 ? after : cleaned(plain.slice(0, said?.index ?? plain.length));
  return rest.length > 2 ? { task: rest } : {};
}

/** "mon 9 order milk", "at 2 30": hours that only the reader knows from numbers. */
const bareHours = ({ seen }: Lexed): string[] =>
  seen.flatMap(({ moment, text }) =>
    moment?.time !== undefined && /^\d{1,2}(?: \d\d)?$|^0\d{3}$/.test(text) ? [text] : [],
  );

const cleaned = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(LEAD, '')
    .replace(/^(?:(?:to|that|about|for|we need to|i need to|they need to)\b\s*|[,:;.-]\s*)+/i, '')
    .replace(/(?:\s+(?:at|on|in|by|every|pls|please|and|thanks|thx)|[\s,.!?])+$/i, '')
    .toLowerCase();
