import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { first } from '../slots/find.ts';
import { avoid, ingredient, knownRecipe, recipe } from '../slots/names.ts';
import { madeWhen } from '../slots/when.ts';

export const trace: IntentReader = {
  intent: 'trace',
  cues: ['who', 'went', 'label', 'labels', 'D', 'lot', 'lots', 'trace', 'recall', 'recalled', 'traced'],
  rules: [
    [/ (?:trace|traced|tracing) (?!of)/, 8],
    [/ (?:recall|recalled) /, 8.5],
    [/ who (?:all )?(?:made|baked|prepped|mixed|cooked|did) (?:[a-z]+ )*(?:R|P|W) /, 9.3],
    [/ what (?:[a-z]+ )?went (?:in|into) (?:[a-z]+ )*(?:R|P|batch) /, 8.6],
    [/ lot (?:numbers?|codes?|no) (?:for|of|on) /, 9],
    [/ (?:which|what) lots? .*(?:went|used|in|into|of) /, 9],
    [/ D /, 6],
    [/ (?:which|what) (?:[a-zF]+ )*lots? /, 8.5],
    [/ lots? /, 5],
    [/ labels? .*batch | batch labels? /, 9],
    [/ (?:which|what) (?:[a-z]+ )*(?:batch|batches|bars|R|P) (?:[a-z]+ )*(?:D|lot) /, 9],
  ],
  slots: (lexed) => ({
    ...knownRecipe(lexed),
    ...lot(lexed),
    ...madeWhen(lexed),
    ...(lexed.syms.has('F') ? ingredient(lexed) : {}),
    ...(/ labels? /.test(lexed.shape) ? { output: 'label' } : {}),
  }),
};

const lot = (lexed: Lexed): Slots => {
  const atom = first(lexed, 'D');
  return atom ? { lot: atom.text } : {};
};

export const recipes: IntentReader = {
  intent: 'recipes',
  cues: [
    'recipe',
    'recipes',
    'ingredients',
    'menu',
    'R',
    'steps',
    'method',
    'instructions',
    'make',
    'how',
    'ideas',
    'idea',
    'card',
    'something',
    'anything',
  ],
  rules: [
    [/ recipes? /, 6],
    [
      / what (?:[a-z]+ )?(?:P|snacks?|things|stuff|dishes) (?:can|do|could) (?:you|we|u|i) (?:make|have|cook|do) /,
      7.5,
    ],
    [/ (?:show|see|pull up|open|find|view) (?:me |us )?(?:the |our |that )?(?:R|P) (?:card|sheet|page) /, 8],
    [/ (?:ideas?|something|what can (?:i|we) make) (?:[a-z]+ )*(?:with|using|from) (?:[a-z]+ )?F /, 7],
    [/ (?:list|show|all|what|which|see|view|any) (?:[a-z]+ )*recipes? /, 7.5],
    [/ R (?:recipe|ingredients|method|steps|instructions) /, 7.5],
    [/ recipe (?:for|of) (?:[a-z]+ )?(?:R|P|[a-z]+) (?!.*N)/, 7.5],
    [/ how (?:do|to|can|does) (?:[a-z]+ )*(?:make|prepare|bake|prep) (?:[a-z]+ )*(?:R|P) (?!.*A)/, 6.8],
    [/ (?:ingredients?) (?:[a-z]+ )*(?:in|of|for) /, 7],
    [/ (?:whats|what is|what goes|what are|what) (?:[a-z]+ )*(?:in|into) (?:[a-z]+ )*(?:R) /, 6],
    [/ (?:steps|method|instructions|directions) /, 6.5],
    [/^ R \?? ?$/, 3],
    [/ (?:menu) /, 5],
  ],
  slots: (lexed) => ({
    ...recipe(lexed),
    ...avoid(lexed),
    ...(/ (?:with|using|from) (?:[a-z]+ )?F /.test(lexed.shape) ? ingredient(lexed) : {}),
  }),
};

const TOPICS =
  /\b(scal\w*|convert\w*|measur\w*|macros?|nutrition|swaps?|allergens?|balance|plan\w*|shopping|shop|cost\w*|stock|made|log\w*|served|tossed|counted|temperature|temps?|schedule|games?|remind\w*|fuel\w*|supplements?|trace|recipes?|batch)\b/g;

export const help: IntentReader = {
  intent: 'help',
  cues: [
    'help',
    'hi',
    'hello',
    'hey',
    'commands',
    'start',
    'what',
    'how',
    'use',
    'new',
    'menu',
    'sup',
    'yo',
    'instructions',
    'examples',
  ],
  rules: [
    [/^ (?:[a-z]+ )?help \?? ?$/, 9],
    [/^ help /, 8],
    [/^ help (?:me )?(?:with|on|about) (?:the |your )?[a-z]+ (?:\? )?$/, 9.6],
    [/ (?:what|wat) (?:all )?(?:can|do) (?:you|u) (?:do|know) /, 8],
    [/ help (?:me )?(?:with|on|about) /, 5],
    [
      /^ (?:hi|hello|hey|yo|sup|hola|howdy|morning|good morning|good afternoon) (?:there |all |team |bot |everyone )?$/,
      7,
    ],
    [/ what (?:can|do|else can) (?:you|u) (?:do|know|help) /, 8],
    [/ how (?:do|can|does) (?:i|we|you|this|it) (?:use|log|work|add|enter|record|start|ask|undo) /, 8],
    [/ how (?:does |do |can )?(?:this|it|you|u)(?: thing| bot| app| tool)? works? /, 8],
    [
      /^ how (?:do|can|would) (?:i|we|you) (?:scale|convert|log|record|enter|add|undo|ask|swap|check|plan|print|count|toss|trace|balance)(?: (?:a|an|my|the|something|things?|what))? (?:recipe|recipes|temperature|waste|batch|batches|game|games|reminder|label|entry|entries|it|delivery|macros|allergens|stock)? ?(?:\? )?$/,
      9,
    ],
    [/ (?:im|i am) new /, 6],
    [/ (?:commands|examples) /, 6.5],
    [/ who are you | what are you /, 7],
    [/ (?:getting|get) started /, 7],
    [/ help $/, 2.5],
  ],
  slots(lexed) {
    const topics = [...lexed.said.matchAll(TOPICS)].map(([, word]) => word);
    const topic = topics.find((word) => !/^log/.test(word ?? '')) ?? topics[0];
    return topic === undefined ? {} : { topic };
  },
};
