import { keepRoster } from '../../../kitchen/roster/keep.ts';
import { type RosterProblem, readRoster } from '../../../kitchen/roster/read-roster.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Section } from '../../answer.ts';
import type { Answered, Asked } from '../../command.ts';
import { contradictions } from './contradictions.ts';
import { rosterOf, staffOnly } from './who.ts';
import { rosterWords } from './words.ts';

const MOST_SHOWN = 20;

/** "import roster.csv": the good lines are kept, each bad one is told with line, field and what to write. */
export async function importRoster(asked: Asked): Promise<Answered> {
  staffOnly(asked);
  const { kitchen, slots, request } = asked;
  if (typeof slots.file !== 'string')
    throw new Problem('needs_more', 'Which file?', 'Write "import roster.csv".');
  const { book } = kitchen;
  const read = readRoster(await opened(asked, slots.file), rosterWords(book), request.nowMs);
  const kept = await keepRoster(rosterOf(asked), read);
  const clash = read.people.flatMap((person) =>
    contradictions(person, book).map((line) => `${person.code}: ${line}`),
  );
  const { added, changed, unchanged, notInFile, toldMore } = kept;
  return {
    answer: {
      title: `Roster: ${added} added, ${changed} changed, ${unchanged} unchanged, ${read.problems.length} to look at.`,
      sections: [
        ...listOf('To look at; everything else is kept', read.problems.map(problemLine)),
        ...listOf('These contradict each other', clash),
        ...listOf('Left as they were', [
          ...(toldMore > 0 ? [`${toldMore} told more than the file says: both are kept`] : []),
          ...(notInFile > 0 ? [`${notInFile} not in the file: they stay until "delete needs of CODE"`] : []),
        ]),
      ],
      cautions: [
        'Who needs what is for staff only; share counts.',
        ...(request.attached && !request.isPrivate
          ? ['The file itself stands where you sent it and others can open it: delete it there.']
          : []),
      ],
      next: [{ label: 'roster', says: 'roster' }],
      audience: 'asker',
      data: { ...kept, problems: read.problems, contradictions: clash },
    },
  };
}

async function opened({ kitchen, request }: Asked, path: string): Promise<Uint8Array> {
  if (request.attached?.kind === 'table') return request.attached.open();
  if (kitchen.rosterFile) return kitchen.rosterFile(path);
  throw new Problem(
    'not_possible',
    'There is no such file here.',
    'Send the .csv file with a direct message to me. Or people write "my needs: peanut, vegan", and staff "WP-07 needs: peanut".',
  );
}

const problemLine = ({ line, field, message, hint }: RosterProblem): string =>
  `${line === undefined ? '' : `line ${line}${field === undefined ? '' : `, ${field}`}: `}${message} ${hint}`;

function listOf(heading: string, items: readonly string[]): Section[] {
  if (items.length === 0) return [];
  const more = items.length > MOST_SHOWN ? [`and ${items.length - MOST_SHOWN} more`] : [];
  return [{ kind: 'list', heading, items: [...items.slice(0, MOST_SHOWN), ...more] }];
}
