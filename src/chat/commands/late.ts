import type { Command, CommandHead } from '../command.ts';

/**
 * A command of which a start needs only the head: most processes answer one request, and what the other commands
 * would do is a third of the program to read. The rest comes with the first request for any of them.
 */
export function late(head: CommandHead): Command {
  return {
    ...head,
    async answers(asked) {
      const { LATE } = await import('./late-commands.ts');
      const command = LATE.get(head.intent);
      if (!command) throw new Error(`no command answers ${head.intent}`);
      return command.answers(asked);
    },
  };
}
