import type { IntentReader } from '../intent-reader.ts';

/** Looking at how the kitchen is set up; changes are made on a form or in the kitchen's folder. */
export const settings: IntentReader = {
  intent: 'settings',
  cues: ['settings', 'setup', 'configure', 'preferences'],
  rules: [
    [
      /^ (?:show |see |open |change |edit |what are |my |our |the |kitchen |me )*(?:settings|preferences) $/,
      9,
    ],
    [/^ (?:set ?up|configure) (?:the |our |my )*kitchen $/, 8],
  ],
  slots: () => ({}),
};
