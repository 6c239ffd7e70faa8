import type { AllergenMark } from '../../nutrition/allergens.ts';
import type { Book } from '../../nutrition/book.ts';
import { Problem } from '../../nutrition/problem.ts';
import type { LabelNews } from './holds.ts';
import type { Holding } from './ledger.ts';
import { placeName } from './places.ts';

const marks = (verb: string, named: readonly AllergenMark[]): string[] =>
  named.length > 0
    ? [`${verb} ${[...new Set(named.map(({ allergen }) => allergen.replaceAll('_', ' ')))].join(', ')}`]
    : [];

/** "label of Rolled oats changed since it was made (may contain peanut)". */
export function sayNews({ name, isOpen, contains, advisory }: LabelNews): string {
  const said = [...marks('contains', contains), ...marks('may contain', advisory)].join('; ');
  return `label of ${name} changed since it was made${said === '' ? '' : ` (${said})`}${isOpen ? ', not checked' : ''}`;
}

/** Each reason that holds these pieces, once. */
export const sayHolds = (book: Book, holdings: readonly Holding[]): string =>
  [
    ...new Set(
      holdings.flatMap(({ holds }) =>
        (holds ?? []).map((hold) =>
          hold.kind === 'warm'
            ? `${placeName(book, hold.location)} last read ${Math.round(hold.tempF * 2) / 2} °F`
            : sayNews(hold.news),
        ),
      ),
    ),
  ].join('; ');

const codesOf = (holdings: readonly Holding[]): string[] => [
  ...new Set(holdings.map(({ batch }) => batch.code)),
];

/** How it goes on: what to read or check, and what staff write; whether it is fit to serve is theirs to decide. */
export function sayHowOn(book: Book, holdings: readonly Holding[]): string {
  const holds = holdings.flatMap((holding) => holding.holds ?? []);
  const isWarm = holds.some(({ kind }) => kind === 'warm');
  const place = holdings.find((holding) => holding.holds?.some(({ kind }) => kind === 'warm'))?.location;
  const open = holds.flatMap((hold) => (hold.kind === 'label' && hold.news.isOpen ? [hold.news.name] : []));
  const codes = codesOf(holdings);
  const read = `log a reading at 41 °F or below where they stand, like "${placeName(book, place ?? '').toLowerCase()} 38F"`;
  const check = `staff read the package and write "checked the label of ${(open[0] ?? '').toLowerCase()}, same as before" or what is new`;
  const reason = isWarm ? 'probe read 39F, door open 5 min' : 'made from the old packages';
  const steps = [
    ...(isWarm ? [read] : []),
    ...(open.length > 0 ? [check] : []),
    `staff decide and write why, which is kept: "release ${codes.join(', ')}: ${reason}"`,
  ].join('; or ');
  const warm = isWarm ? 'If nobody can say how long it was warm, throw it out. ' : '';
  return `${warm}${steps.charAt(0).toUpperCase()}${steps.slice(1)}; or "tossed all ${codes[0]}".`;
}

/** @throws Problem `not_possible` when what was named cannot be had without what is held. */
export function refuseHeld(
  book: Book,
  there: readonly Holding[],
  usable: readonly Holding[],
  pieces: number | 'all',
  held: readonly Holding[],
): void {
  const ready = usable.reduce((sum, holding) => sum + holding.pieces, 0);
  if (held.length === 0 || (ready > 0 && (pieces === 'all' || pieces <= ready))) return;
  if (pieces !== 'all' && pieces > there.reduce((sum, holding) => sum + holding.pieces, 0)) return;
  throw new Problem(
    'not_possible',
    `Held, serve none of ${codesOf(held).join(', ')}: ${sayHolds(book, held)}. Nothing was logged.`,
    sayHowOn(book, held),
  );
}
