import type { Kitchen } from '../kitchen/kitchen.ts';
import { bookAsTold, type LabelStanding, labelStandings } from '../kitchen/pantry/book-as-told.ts';
import type { StatedPrice } from '../kitchen/pantry/pantry.ts';
import type { Book } from '../nutrition/book.ts';
import { Problem } from '../nutrition/problem.ts';
import type { Intent } from './slots.ts';

/** Requests whose answer hangs on what packages say or cost. */
const READS_PACKAGES: ReadonlySet<Intent> = new Set([
  'scale',
  'macros',
  'swap',
  'allergens',
  'balance',
  'plan',
  'shop',
  'cost',
  'stock',
  'made',
  'fuel',
  'recipes',
]);

export interface KitchenAsTold {
  readonly kitchen: Kitchen;
  /** Labels that were told could not be read, so the answer goes by the book alone. */
  readonly caution?: string;
}

const UNREAD =
  'Label changes that were told in chat cannot be read right now: this goes by the book alone. Read the packages in use.';

/** The last book made of each kitchen's book and workspace, so that its finders are made once and not at every request. */
const lastOf = new WeakMap<Book, Map<string, { readonly told: string; readonly book: Book }>>();

/** The kitchen with the labels and prices its workspace told; as it is where none matters or none was told. */
export async function kitchenAsTold(
  kitchen: Kitchen,
  workspace: string,
  intent: Intent,
): Promise<KitchenAsTold> {
  if (!READS_PACKAGES.has(intent) || !kitchen.remembers()) return { kitchen };
  try {
    const ledger = kitchen.ledgers(workspace);
    const labels = labelStandings(await ledger.labelNotes());
    const prices = await ledger.prices();
    if (labels.size === 0 && prices.length === 0) return { kitchen };
    return { kitchen: { ...kitchen, book: madeOf(kitchen.book, workspace, labels, prices) } };
  } catch (error) {
    if (error instanceof Problem && error.code === 'unavailable') return { kitchen, caution: UNREAD };
    throw error;
  }
}

function madeOf(
  base: Book,
  workspace: string,
  labels: ReadonlyMap<string, LabelStanding>,
  prices: readonly StatedPrice[],
): Book {
  const told = JSON.stringify([[...labels.values()], prices]);
  const ofBase = lastOf.get(base) ?? new Map();
  lastOf.set(base, ofBase);
  const last = ofBase.get(workspace);
  if (last?.told === told) return last.book;
  const book = bookAsTold(base, labels, prices);
  ofBase.set(workspace, { told, book });
  return book;
}
