import { isNode, LineCounter, parseDocument } from 'yaml';
import type { BookProblem } from '../nutrition/book.ts';

export interface YamlFile {
  /** What the file says, unchecked; `undefined` when it cannot be read. */
  readonly value: unknown;
  /** Line of the value at `path`, or of its nearest parent that exists. */
  readonly lineOf: (path: readonly PropertyKey[]) => number | undefined;
  readonly problems: readonly BookProblem[];
}

/** More than any card or label needs; a larger file is a mistake or an attack. */
const MOST_CHARACTERS = 200_000;

/**
 * Reads the text of one YAML file and remembers where each value stands. Nothing is thrown.
 *
 * @example
 * readYaml('name: Oats\nserving:\n  grams: 40\n', 'oats.yaml').lineOf(['serving', 'grams']) // 3
 */
export function readYaml(text: string, file: string): YamlFile {
  if (text.length > MOST_CHARACTERS) {
    return unreadable(file, undefined, `The file has more than ${MOST_CHARACTERS} characters.`);
  }
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const first = document.errors[0];
  if (first !== undefined) {
    return unreadable(file, lines.linePos(first.pos[0]).line, `This is not YAML: ${first.message}`);
  }
  const lineOf = (path: readonly PropertyKey[]): number | undefined => {
    for (let length = path.length; length >= 0; length -= 1) {
      const node = length === 0 ? document.contents : document.getIn(path.slice(0, length), true);
      if (isNode(node) && node.range) return lines.linePos(node.range[0]).line;
    }
    return undefined;
  };
  try {
    return { value: document.toJS(), lineOf, problems: [] };
  } catch (error) {
    return unreadable(file, undefined, `This YAML cannot be used: ${String(error)}`);
  }
}

function unreadable(file: string, line: number | undefined, message: string): YamlFile {
  const problem = {
    file,
    ...(line === undefined ? {} : { line }),
    message,
    hint: 'Write "key: value" lines, indent with spaces, and put text that holds ": " or "#" between quotes.',
  };
  return { value: undefined, lineOf: () => undefined, problems: [problem] };
}
