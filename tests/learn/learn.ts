/** A request's words and what it was about. */
export interface Lesson {
  readonly words: readonly string[];
  readonly intent: string;
}

/** For each word, what it weighs for each intent. */
export type Learned = ReadonlyMap<string, ReadonlyMap<string, number>>;

const ROUNDS = 25;
const FIRST_STEP = 0.3;
const STEP_SHRINKS = 0.93;
/** Draws weights toward 0, so that a word seen seldom weighs little. */
const PULL = 1e-4;
/** A word of only one request says nothing of others. */
const LEAST_SEEN = 2;
/** Walks the lessons in an order that is always the same and mixes the files they came from. */
const STRIDE = 7919;

/** Multinomial logistic regression by stochastic gradient descent, without chance: the same lessons teach the same. */
export function learn(lessons: readonly Lesson[]): Learned {
  const words = wordsSeenOften(lessons);
  const intents = [...new Set(lessons.map(({ intent }) => intent))];
  const weights = words.map(() => new Float64Array(intents.length));
  const index = new Map(words.map((word, i) => [word, i]));
  const rows = lessons.map((lesson) => lesson.words.flatMap((word) => index.get(word) ?? []));
  const answers = lessons.map(({ intent }) => intents.indexOf(intent));
  let step = FIRST_STEP;
  for (let round = 0; round < ROUNDS; round++, step *= STEP_SHRINKS) {
    for (let k = 0; k < lessons.length; k++) {
      const at = (k * STRIDE + round * 31) % lessons.length;
      correct(weights, rows[at] ?? [], answers[at] ?? 0, step);
    }
  }
  return new Map(
    words.map((word, i) => [word, new Map(intents.map((intent, c) => [intent, weights[i]?.[c] ?? 0]))]),
  );
}

function wordsSeenOften(lessons: readonly Lesson[]): string[] {
  const seen = new Map<string, number>();
  for (const { words } of lessons) for (const word of words) seen.set(word, (seen.get(word) ?? 0) + 1);
  return [...seen].filter(([, times]) => times >= LEAST_SEEN).map(([word]) => word);
}

/** One lesson: the weights of its words move toward its answer by what was missing. */
function correct(
  weights: readonly Float64Array[],
  row: readonly number[],
  answer: number,
  step: number,
): void {
  const likely = softmax(weights, row);
  const scale = Math.sqrt(row.length || 1);
  for (const word of row) {
    const own = weights[word];
    if (!own) continue;
    own.forEach((weight, c) => {
      const missing = (c === answer ? 1 : 0) - (likely[c] ?? 0);
      own[c] = weight + step * (missing / scale - PULL * weight);
    });
  }
}

function softmax(weights: readonly Float64Array[], row: readonly number[]): Float64Array {
  const sums = new Float64Array(weights[0]?.length ?? 0);
  for (const word of row) {
    weights[word]?.forEach((weight, c) => {
      sums[c] = (sums[c] ?? 0) + weight;
    });
  }
  const most = Math.max(...sums);
  const shares = sums.map((sum) => Math.exp(sum - most));
  const total = shares.reduce((all, share) => all + share, 0);
  return shares.map((share) => share / total);
}
