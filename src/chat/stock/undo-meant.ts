import type { EventKind } from '../../kitchen/stock/ledger.ts';

/** What a word after "undo" says of the entry that is meant; "move" may be of food or of a game. */
const NAMED: readonly (readonly [words: RegExp, kinds: readonly EventKind[]])[] = [
  [/^(?:batch|making)/, ['made', 'corrected']],
  [/^serv/, ['served', 'moved']],
  [/^(?:toss|throw|waste)/, ['tossed']],
  [/^count/, ['counted']],
  [/^correct/, ['corrected']],
  [/^mov/, ['moved', 'game']],
  [/^(?:reading|temp)/, ['temperature']],
  [/^(?:deliver|purchase)/, ['received']],
  [/^price/, ['priced']],
  [/^label/, ['label']],
  [/^(?:game|match|meet|cancel)/, ['game']],
  [/^(?:import|calendar)/, ['calendar']],
];
const AFTER_UNDO = /\bundo\s+(?:(?:the|my|that|this|last|latest|game)\s+)*([a-z]+)/i;

/** The kinds of entry that "undo my count", "undo the last serving" name; `undefined` when any is meant. */
export function kindsToUndo(text: string): readonly EventKind[] | undefined {
  const word = AFTER_UNDO.exec(text)?.[1]?.toLowerCase();
  return word === undefined ? undefined : NAMED.find(([words]) => words.test(word))?.[1];
}
