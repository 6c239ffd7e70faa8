import { describeBlindSet } from '../helpers/blind-set.ts';

describeBlindSet('reading requests written without having seen the reader', 'blind', {
  askedEach: 10,
  intents: 97,
  slots: 97,
});
