import { writeFileSync } from 'node:fs';
import { type Learned, learn } from './learn.ts';
import { FOLDERS, lessonsIn } from './lessons.ts';

/** Less than this is not worth a place in the table. */
const LEAST = 0.2;

// Folders named after the command are left out, to measure with them what was not learned from.
const leftOut = process.argv.slice(2);
const learned = learn(lessonsIn(FOLDERS.filter((folder) => !leftOut.includes(folder))));
writeFileSync(
  'src/chat/reading/evidence/word-weights.json',
  `${JSON.stringify(asTable(learned), null, 2)}\n`,
);

/** "macros 3.1 scale -0.4" by word, in the order of the alphabet, so that a change shows as the lines it changes. */
function asTable(weights: Learned): Record<string, string> {
  const rows = [...weights].map(([word, row]): [string, string] => [
    word,
    [...row]
      .filter(([, weight]) => Math.abs(weight) >= LEAST)
      .map(([intent, weight]) => `${intent} ${weight.toFixed(1)}`)
      .join(' '),
  ]);
  return Object.fromEntries(rows.filter(([, row]) => row !== '').sort(([a], [b]) => (a < b ? -1 : 1)));
}
