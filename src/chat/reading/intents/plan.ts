import type { IntentReader } from '../intent-reader.ts';
import { knownRecipe, opponent, sport } from '../slots/names.ts';
import { planCounts } from '../slots/plan-counts.ts';
import { when } from '../slots/when.ts';

export const plan: IntentReader = {
  intent: 'plan',
  cues: [
    'plan',
    'planning',
    'planned',
    'travelling',
    'traveling',
    'travel',
    'trip',
    'production',
    'prep',
    'roster',
    'bus',
    'packs',
    'going',
    'A',
    'heads',
    'bags',
    'bake',
    'make',
  ],
  rules: [
    [
      /^ what (?:do|must|should) (?:we|i) (?:need|have) to (?:bake|make|prep|produce|cook) (?:W|this|for|on|over) /,
      7.6,
    ],
    [/^ (?:pls |please )?plan (?:snacks|food|production|prep|P|W|for) /, 8.8],
    [/^ what (?:should|do|shall) (?:we|i) (?:need to )?(?:bake|make|prep|produce) W /, 7.5],
    [/ (?:plan|planning|production plan) /, 7.5],
    [
      / N (?:P )?(?:are )?(?:travelling|traveling|travel|travelers|going|heading|coming|flying|on the bus|on bus|to feed) /,
      8,
    ],
    [/ (?:travelling|traveling|travel|trip|bus|roster|flight) .*N /, 7],
    [/ N .*(?:travelling|traveling|trip|on the bus) /, 7],
    [/ N (?:[a-z]+ ){0,3}(?:P )?(?:are |is |who are |with )?A .*N (?:[a-z]+ )?(?:P )?(?:are |is )?A /, 8],
    [/ (?:W|N) .*N (?:P )?.*N (?:are |is )?A /, 7],
    [/ N P .*N (?:are |is |with |[a-z]+ )?A /, 7.6],
    [
      / (?:what|how much|how many) (?:[a-z]+ )*(?:prep|make|bake|produce|need) (?:[a-z]+ )*for (?:[a-z]+ )*(?:W|game|trip|weekend) .*N /,
      7,
    ],
    [/ what (?:[a-z]+ )*(?:prep|make|bake|produce) (?:[a-z]+ )*for (?:[a-z]+ )*(?:W|game|trip) /, 6.6],
    [/ (?:packs|bags) for N /, 6.5],
  ],
  slots: (lexed) => ({
    ...planCounts(lexed),
    ...opponent(lexed),
    ...when(lexed),
    ...sport(lexed),
    ...knownRecipe(lexed),
  }),
};
