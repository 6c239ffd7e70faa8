import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { find, first } from '../slots/find.ts';
import { numberOf } from '../slots/numbers.ts';
import { when } from '../slots/when.ts';

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
  ],
  rules: [
    [/ (?:remind|reminder|reminders) /, 9],
    [/ (?:timer|alarm) /, 8.5],
    [/ snooze /, 9],
    [/ stop (?:reminding|bugging|pinging|telling|texting) (?:me|us|the|everyone) /, 9],
    [/^ (?:in |after )?(?:Z|W) (?:[a-z]+ )?(?:tell|ping|nudge|text|message) (?:me|us|the|everyone) to /, 9],
    [
      / (?:ping|nudge|alert|notify|tell|text|message) (?:me|us|everyone|everybody|the|all|P|[a-z]+) (?:[a-z]+ )*W /,
      8.5,
    ],
    [/ (?:dont let|make sure|let) (?:me|us|P|the) (?:[a-z]+ )*(?:forget|remember|know) /, 8.6],
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
      ...(/\bevery\b|\beach (?:day|mon|tue|wed|thu|fri|sat|sun|morning|week)|\bdaily\b/i.test(lexed.text)
        ? { recurring: true }
        : {}),
    };
  },
};

function moment(lexed: Lexed): Slots {
  const lead = find(lexed, / Z before (?:the |a |our |every |each |next )*(?:game|match|meet|kickoff) /)?.[0];
  if (lead?.value !== undefined)
    return {
      when: `game -${lead.value % 1440 === 0 ? `${lead.value / 1440}d` : lead.value % 60 === 0 ? `${lead.value / 60}h` : `${lead.value}min`}`,
    };
  const said = when(lexed);
  const days = EVERY.exec(lexed.text)?.[1];
  if (days !== undefined) return { ...said, when: `every ${daysOf(days)}${timeOf(said.when)}` };
  if (said.when !== undefined) return said;
  const length = first(lexed, 'Z');
  return length && typeof numberOf(length) === 'number' ? { when: `+${numberOf(length)}min` } : {};
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
  return / (?:move|change|reschedule|push|shift) (?:[a-z]+ )*(?:reminders?|J) /.test(shape)
    ? { action: 'move' }
    : {};
}

const AUDIENCE =
  /\b(?:remind|ping|nudge|alert|notify|tell|message)\s+(?:the\s+|all\s+(?:the\s+)?)?(me|us|everyone|everybody|interns?|team|staff|dietitian|kitchen|coach(?:es)?|crew|[a-z]+ staff)\b/i;

function audience(lexed: Lexed): Slots {
  const whom = AUDIENCE.exec(lexed.text)?.[1]?.toLowerCase();
  return whom === undefined ? {} : { audience: whom };
}

const LEAD =
  /^(?:(?:hey|hi|pls|please|can|could|u|you|also|ok|and)\s+)*(?:(?:set|add|create|make|put)\s+)?(?:an?\s+)?(?:(?:remind(?:er|ers)?|timer|alarm|ping|nudge|alert|notify|tell|message|snooze)\b\s*)?(?:(?:don'?t let|make sure|let)\s+)?(?:(?:the|all)\s+)*(?:(?:me|us|everyone|everybody|interns?|team|staff|dietitian|kitchen|coach(?:es)?|crew)\b\s*)?(?:forget\s+|remember\s+)?/i;
const TIME = new RegExp(
  `\\b(?:(?:in|on|at|by|around|this|next|every|each|for|the)\\s+)*(?:${DAY}|today|tonight|tomorrow|tmrw|tmr|tomorow|yesterday|daily|noon|midnight|\\d{1,2}:\\d\\d(?:\\s*[ap]\\.?m\\b\\.?)?|\\d{1,2}\\s*[ap]m\\b|\\d{1,2}\\/\\d{1,2}(?:\\/\\d+)?|\\d{4}-\\d\\d-\\d\\d|(?:\\+|in\\s+)?(?:an?|half an|\\d+)\\s*(?:min(?:ute)?s?|hours?|hrs?|h|days?)\\b(?:\\s+from now)?(?:\\s+before (?:the |each |every )?(?:game|match|meet))?|(?:day|night|morning) before (?:the |each |every )?(?:next )?(?:game|match|meet)|game\\s*-\\s*\\d+\\s*(?:d|h|min)|(?:every|each|this)\\s+(?:day|morning|evening|night|afternoon|week)|morning|at\\s+\\d{1,2}(?!\\d))\\b`,
  'gi',
);

/** What is left when the asking and the time are taken away. */
function task(lexed: Lexed): Slots {
  const about = /\breminder\s+(?:about|for|to)\s+(.+)$/i.exec(lexed.text)?.[1];
  const rest = (about ?? lexed.text.replace(LEAD, ''))
    .replace(EVERY, ' ')
    .replace(TIME, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^(?:(?:(?:to|that|about|for|we need to|i need to)\b|[,:;.-])\s*)+/i, '')
    .replace(/(?:\s+(?:at|on|in|by|every|pls|please|and)|[\s,.!?])+$/i, '')
    .toLowerCase();
  return rest.length > 2 ? { task: rest } : {};
}
