import type { Command } from '../command.ts';

export interface NearExample {
  readonly command: Command;
  readonly example: string;
}

/** Words beyond this add nothing to a search over some hundred examples, and cost time. */
const MOST_CHARACTERS = 200;

/**
 * The examples of `commands` that share most with `text`, typos allowed, best first, one a command.
 * Empty when nothing is alike.
 */
export async function nearestCommands(
  text: string,
  commands: readonly Command[],
  most: number,
): Promise<NearExample[]> {
  const { default: MiniSearch } = await import('minisearch');
  const index = new MiniSearch({
    fields: ['intent', 'example', 'line'],
    searchOptions: { boost: { intent: 3, example: 2 }, prefix: true, fuzzy: 0.25 },
  });
  const rows = commands.flatMap((command) => command.help.examples.map((example) => ({ command, example })));
  index.addAll(
    rows.map(({ command, example }, id) => ({
      id,
      example,
      intent: command.intent,
      line: command.help.line,
    })),
  );
  const near: NearExample[] = [];
  for (const hit of index.search(text.slice(0, MOST_CHARACTERS))) {
    const row = rows[Number(hit.id)];
    if (row && !near.some((other) => other.command === row.command)) near.push(row);
    if (near.length === most) break;
  }
  return near;
}
