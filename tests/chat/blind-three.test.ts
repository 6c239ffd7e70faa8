import { describeBlindSet } from '../helpers/blind-set.ts';

describeBlindSet('reading requests of a third writer who had not seen the reader', 'blind-three', {
  askedEach: 5,
  intents: 96,
  slots: 94,
});
