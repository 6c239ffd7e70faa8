import type { Slots } from '../../slots.ts';
import type { Lexed } from '../lexed.ts';
import { NUMBER_WORDS } from '../vocabulary/numbers.ts';
import { when } from './when.ts';

const MONTH =
  'january|jan|february|feb|april|apr|june|jun|july|jul|august|aug|september|sept|sep|october|oct|november|nov|december|dec';
const MONTHS_SAID = new RegExp(
  ` (?:(?:in|for|of|during|and|to|through|schedule|games) (?=(?:march|mar|may) ))?(${MONTH}|march|mar|may)(?= )`,
  'g',
);
/** Words that are months only after one of these: "mar", "may". */
const NEEDS_LEAD = /^ (?:march|mar|may)$/;
const STRETCH = / (?:next|coming|following|for) ([a-z0-9]+) (day|week)s /;
const ALL_TO_COME = / (?:this|the|whole|entire|all|full|rest of the) (?:season|year|semester)(?! opener) /;

/** The days a question about the schedule names: a moment, months by name, "next 2 weeks", "the season". */
export function daysAsked(lexed: Lexed): Slots {
  const moment = when(lexed);
  const stretch = STRETCH.exec(lexed.said);
  const count = stretch ? (NUMBER_WORDS.get(stretch[1] ?? '') ?? Number(stretch[1])) : Number.NaN;
  if (count > 0) return { when: `${count} ${stretch?.[2]}s` };
  if (typeof moment.when === 'string' && /[a-z]|\d-/.test(moment.when))
    return / week of (?:the )?W /.test(lexed.shape) && /^\d{4}-/.test(moment.when)
      ? { ...moment, when: `week of ${moment.when}` }
      : moment;
  const months = [...lexed.said.matchAll(MONTHS_SAID)]
    .filter(([whole]) => !NEEDS_LEAD.test(whole))
    .map(([, month]) => `${month}`.slice(0, 3));
  if (months.length > 0) return { ...moment, when: `months ${months.join(' ')}` };
  return ALL_TO_COME.test(lexed.said) ? { ...moment, when: 'season' } : moment;
}
