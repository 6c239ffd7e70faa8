import { noMemory } from '../../kitchen/no-memory.ts';
import type { ComposingDesk } from '../../kitchen/reminders/composer.ts';
import type { Asked } from '../command.ts';
import type { Slots } from '../slots.ts';

/** What staff would ask at this moment, so that a reminder and an answer to the same question read the same. */
export function askedByStaff({ state, ledger }: ComposingDesk, slots: Slots = {}): Asked {
  const { book, nowMs } = state;
  return {
    slots,
    conversation: {},
    kitchen: { ...noMemory, book, clock: { nowMs: () => nowMs }, ledgers: () => ledger },
    request: {
      text: '',
      asker: { role: 'staff', who: 'reminder', workspace: '' },
      conversation: 'reminder',
      isPrivate: false,
      nowMs,
    },
  };
}
