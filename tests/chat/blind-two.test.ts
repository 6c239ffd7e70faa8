import { describeBlindSet } from '../helpers/blind-set.ts';

describeBlindSet('reading requests of a second writer who had not seen the reader', 'blind-two', {
  askedEach: 5,
  intents: 96,
  slots: 96,
});
