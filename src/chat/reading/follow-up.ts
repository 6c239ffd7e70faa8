import type { ConversationState } from '../conversation.ts';
import type { Intent, Reading } from '../slots.ts';
import { byShape } from './by-shape.ts';
import { readerOf } from './choose.ts';
import type { IntentReader } from './intent-reader.ts';
import type { Lexed } from './lexed.ts';
import { stems } from './stem.ts';

interface Chosen {
  readonly reader: IntentReader;
  readonly score: number;
}

/** A reading this strong stands by itself, whatever was said before. */
const STANDS_ALONE = 6.4;
const LONGEST_FOLLOW_UP = 9;

/** What a fragment may mean, by its shape; the last intent is kept when it is among them. */
const FRAGMENTS: readonly (readonly [RegExp, readonly Intent[]])[] = [
  [
    /^ (?:[a-z]+ ){0,3}(?:cut|slice|divide|into|in|at) (?:[a-z]+ ){0,3}N (?:[a-z]+ ){0,2}(?:P )?(?:instead )?\?? ?$/,
    ['macros', 'scale', 'cost'],
  ],
  [/^ (?:[a-z]+ ){0,2}in (?:U|g) (?:please |pls |thanks )?\?? ?$/, ['scale', 'measure', 'shop', 'macros']],
  [
    /^ (?:and |ok |what about |how about |for |make it |now |actually |no )*N P (?:[a-z]+ )?\?? ?$/,
    ['scale', 'cost', 'shop', 'plan', 'macros', 'stock'],
  ],
  [
    // A bare number after macros is how many to make: figures are asked of pieces or grams.
    /^ (?:and |ok |what about |how about |for |make it |now |actually |no )*N (?:[a-z]+ )?\?? ?$/,
    ['scale', 'cost', 'shop', 'plan', 'stock'],
  ],
  [
    /^ (?:and |ok |what about |how about |for |make it |now |actually |no )*B \?? ?$/,
    ['scale', 'cost', 'shop', 'macros', 'measure'],
  ],
  [
    /^ (?:and |what about |how about |for |on |now )*W \?? ?$/,
    ['plan', 'shop', 'schedule', 'stock', 'cost', 'remind'],
  ],
  [
    /^ (?:and |what about |how about |for |no |the |i mean |i meant |not |in |ones? |one )*(?:R|F|P)(?: ones?| one)? \?? ?$/,
    [
      'scale',
      'macros',
      'allergens',
      'swap',
      'stock',
      'cost',
      'recipes',
      'shop',
      'measure',
      'made',
      'served',
      'tossed',
      'counted',
      'balance',
      'trace',
      'supplement',
    ],
  ],
  [
    /^ (?:and |what about |how about |what if |with |if |we |i |use |add |using )*(?:Q )?F (?:[a-z]+ ){0,2}\?? ?$/,
    ['macros', 'swap', 'scale', 'allergens', 'cost'],
  ],
  [
    /^ (?:and |what about |how about |is it |also )*(?:per |each |a )(?:P|Q|R|batch|person|N U) \?? ?$/,
    ['macros', 'cost', 'scale'],
  ],
  [/^ (?:and |what about |how about |the |just )*M \?? ?$/, ['macros', 'fuel']],
  [/^ (?:and |what about |how about |in |the )*L \?? ?$/, ['stock', 'temperature', 'made']],
];

/**
 * A short message that leans on what came before: the answer to our question, or a change to the last request.
 * The conversation only decides between readings; slots hold what this message says.
 */
export function followUp(
  lexed: Lexed,
  conversation: ConversationState,
  chosen: Chosen | undefined,
): Reading | undefined {
  if (!conversation.last && !conversation.question) return undefined;
  const exact = exactAnswer(lexed, conversation);
  if (exact) return exact;
  if (lexed.seen.length > LONGEST_FOLLOW_UP) return undefined;
  return answerToQuestion(lexed, conversation, chosen) ?? fragment(lexed, conversation, chosen);
}

/** An option typed as it was offered answers, whatever else the words could mean. */
function exactAnswer({ text }: Lexed, { question }: ConversationState): Reading | undefined {
  const option = question?.options.find((each) => plainWords(each) === plainWords(text));
  if (!question || option === undefined) return undefined;
  return { intent: question.reading.intent, slots: { [question.slot]: option } };
}

const plainWords = (text: string): string => (text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).join(' ');

/** The intents each fitting fragment may change, for any request with this shape. */
const fragmentsFitting = byShape(({ shape }) =>
  FRAGMENTS.flatMap(([pattern, intents]) => (pattern.test(shape) ? [intents] : [])),
);

function fragment(
  lexed: Lexed,
  { last }: ConversationState,
  chosen: Chosen | undefined,
): Reading | undefined {
  if (!last) return undefined;
  const fitting = fragmentsFitting(lexed).find((intents) => intents.includes(last.intent));
  if (!fitting || (chosen && chosen.score >= STANDS_ALONE && chosen.reader.intent !== 'macros'))
    return undefined;
  const reader = readerOf(last.intent);
  return reader && { intent: last.intent, slots: reader.slots(lexed) };
}

function answerToQuestion(
  lexed: Lexed,
  { question }: ConversationState,
  chosen: Chosen | undefined,
): Reading | undefined {
  if (!question || (chosen && chosen.score >= STANDS_ALONE)) return undefined;
  const option = optionSaid(lexed, question.options);
  const intent = question.reading.intent;
  const said = readerOf(intent)?.slots(lexed) ?? {};
  if (option !== undefined) return { intent, slots: { ...said, [question.slot]: option } };
  return said[question.slot] === undefined ? undefined : { intent, slots: said };
}

/** The option whose words hold all the words said, or that is named by its number. */
function optionSaid(lexed: Lexed, options: readonly string[]): string | undefined {
  const spoken = stems(lexed.said).filter(
    (word) => !/^(the|a|an|one|pls|please|no|i|mean|meant|yes|for|it|is)$/.test(word),
  );
  if (spoken.length === 0) return undefined;
  const fitting = options.filter((option) => {
    const words = new Set(stems(option));
    return spoken.every((word) => words.has(word));
  });
  return fitting.length === 1 ? fitting[0] : undefined;
}
