import type { types } from '@slack/bolt';
import type { WebClient } from '@slack/web-api';
import type { Clock } from '../kitchen/kitchen.ts';
import { boldText, line, richBlock } from './blocks/elements.ts';
import { createExpiringMap } from './expiring-map.ts';
import { LIMITS } from './limits.ts';

/** A member id as the kitchen's records keep it: who made, who read, who has it. */
const MEMBER = /\b[UW](?=[A-Z]*\d)[A-Z0-9]{6,14}\b/g;
const MOST_LOOKED_UP = 8;
const REMEMBER_MS = 60 * 60_000;

/** Shows members by name where the records hold their ids. */
export interface People {
  /**
   * The blocks with each member of the workspace as Slack shows people. For what one person reads alone: in a channel it
   * would call the people it names.
   */
  named(
    blocks: readonly types.KnownBlock[],
    workspace: string,
    client: WebClient,
  ): Promise<types.KnownBlock[]>;
}

export function createPeople(clock: Clock): People {
  const known = createExpiringMap<boolean>(clock, 5_000);

  async function isMember(id: string, workspace: string, client: WebClient): Promise<boolean> {
    const key = `${workspace}:${id}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    // Words that only look like an id must not make Slack refuse the message.
    const found = await client.users.info({ user: id }).then(
      ({ user }) => user !== undefined,
      () => false,
    );
    known.set(key, found, REMEMBER_MS);
    return found;
  }

  return {
    async named(blocks, workspace, client) {
      const whole = [...blocks];
      const ids = [...new Set(JSON.stringify(blocks).match(MEMBER) ?? [])].slice(0, MOST_LOOKED_UP);
      const members = new Set<string>();
      for (const id of ids) if (await isMember(id, workspace, client)) members.add(id);
      if (members.size === 0) return whole;
      const named = whole.map((block) => {
        const rich = block.type === 'header' ? spoken(block) : block;
        return rich.type === 'rich_text'
          ? { ...rich, elements: rich.elements.map((element) => withNames(element, members)) }
          : rich;
      });
      return JSON.stringify(named).length <= LIMITS.message ? named : whole;
    },
  };
}

/** A header shows nobody by name; bold text does. */
function spoken(block: types.HeaderBlock): types.KnownBlock {
  const { text } = block.text;
  return text.search(MEMBER) < 0 ? block : richBlock(line(boldText(text, LIMITS.title)));
}

function withNames(
  element: types.RichTextBlockElement,
  members: ReadonlySet<string>,
): types.RichTextBlockElement {
  if (element.type === 'rich_text_section') {
    return { ...element, elements: element.elements.flatMap((part) => split(part, members)) };
  }
  if (element.type !== 'rich_text_list') return element;
  return {
    ...element,
    elements: element.elements.map((item) => ({
      ...item,
      elements: item.elements.flatMap((part) => split(part, members)),
    })),
  };
}

type Part = types.RichTextSection['elements'][number];

function split(part: Part, members: ReadonlySet<string>): Part[] {
  if (part.type !== 'text') return [part];
  const parts: Part[] = [];
  let from = 0;
  for (const { 0: id, index } of part.text.matchAll(MEMBER)) {
    if (!members.has(id)) continue;
    if (index > from) parts.push({ ...part, text: part.text.slice(from, index) });
    parts.push({ type: 'user', user_id: id });
    from = index + id.length;
  }
  if (from < part.text.length || parts.length === 0) parts.push({ ...part, text: part.text.slice(from) });
  return parts;
}
