import type { Answered, Asked } from '../../command.ts';
import { forgetNeeds } from './forget.ts';
import { importRoster } from './import.ts';
import { setNeeds } from './set.ts';
import { showPerson, showRoster } from './show.ts';

/** What is said and asked about who needs what: told, shown, forgotten, loaded from a file. Only the asker sees it. */
export function rosterAnswer(asked: Asked): Promise<Answered> {
  switch (asked.slots.action) {
    case 'set':
      return setNeeds(asked);
    case 'forget':
      return forgetNeeds(asked);
    case 'import':
      return importRoster(asked);
    default:
      return asked.slots.who === undefined ? showRoster(asked) : showPerson(asked);
  }
}
