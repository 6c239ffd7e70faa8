import { createChat, type Reply } from '../../src/chat/chat.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { Kitchen } from '../../src/kitchen/kitchen.ts';
import { openKitchen } from '../../src/open-kitchen.ts';
import type { Database } from '../../src/store/database.ts';
import { gameBooksIn } from '../../src/store/game-book.ts';
import { ledgersIn } from '../../src/store/ledger.ts';
import { rostersIn } from '../../src/store/roster.ts';

export interface Asks {
  readonly kitchen: Kitchen;
  readonly workspace: string;
  ask(text: string, role?: PersonRole, who?: string): Promise<Reply>;
  /** The answer as people read it; a problem as its message and hint. */
  read(text: string, role?: PersonRole, who?: string): Promise<string>;
}

let rooms = 0;

/** The demo kitchen with an empty memory of its own; `file` is what "import x.csv" opens. */
export async function rosterKitchen(database: Database, nowMs: number, file?: string): Promise<Asks> {
  const demo = await openKitchen({ nowMs: () => nowMs });
  const kitchen: Kitchen = {
    ...demo,
    games: gameBooksIn(database),
    ledgers: ledgersIn(database, () => nowMs),
    rosters: rostersIn(database),
    ...(file === undefined ? {} : { rosterFile: async () => new TextEncoder().encode(file) }),
  };
  const chat = createChat(kitchen, (error) => {
    throw error;
  });
  const workspace = `R${++rooms}`;
  const ask: Asks['ask'] = (text, role = 'staff', who = 'ST-01') =>
    chat.ask({
      text,
      asker: { role, who, workspace },
      conversation: `${workspace}${who}`,
      isPrivate: true,
      nowMs,
    });
  return {
    kitchen,
    workspace,
    ask,
    async read(text, role, who) {
      const { answer, error } = await ask(text, role, who);
      return answer ? plainText(answer, 1_000) : `${error?.message} ${error?.hint}`;
    },
  };
}
