import { INTENTS } from '../../slots.ts';
import { evidenceWords } from './evidence-words.ts';
import WORD_WEIGHTS from './word-weights.json' with { type: 'json' };

/** How strongly one word speaks for or against each intent it says something of: intent index, weight, index, … */
type Weights = readonly number[];

const names: readonly string[] = INTENTS;

let table: ReadonlyMap<string, Weights> | undefined;

/** "macros 3.1 scale -0.4" as numbers; read at the first message that is weighed. */
function weightsTable(): ReadonlyMap<string, Weights> {
  table ??= new Map(
    Object.entries(WORD_WEIGHTS).map(([word, row]) => [
      word,
      row.split(' ').map((part, i) => (i % 2 === 0 ? names.indexOf(part) : Number(part))),
    ]),
  );
  return table;
}

/** What the words of a message weigh for each intent, in the order of `INTENTS`. */
export interface Evidence {
  readonly sums: Float64Array;
  /** The share of its words that no weight is known of, 0 to 1. */
  readonly strange: number;
}

export function weigh(shape: string): Evidence {
  const weights = weightsTable();
  const sums = new Float64Array(INTENTS.length);
  const words = evidenceWords(shape);
  let strange = 0;
  for (const word of words) {
    const row = weights.get(word);
    if (!row) strange++;
    else addTo(sums, row);
  }
  return { sums, strange: words.size === 0 ? 0 : strange / words.size };
}

function addTo(sums: Float64Array, row: Weights): void {
  for (let i = 0; i < row.length; i += 2) {
    const at = row[i] as number;
    sums[at] = (sums[at] as number) + (row[i + 1] as number);
  }
}

/** How likely one intent is by the words alone, its sums taken as logarithms of odds. */
export function likelihood({ sums }: Evidence, index: number): number {
  let total = 0;
  for (const sum of sums) total += Math.exp(sum - (sums[index] as number));
  return 1 / total;
}
