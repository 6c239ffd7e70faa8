import type { Book } from '../../nutrition/book.ts';
import { addDays, dateOf } from '../time/zone.ts';
import { firstOut } from './choose.ts';
import type { Holding } from './ledger.ts';
import { standingOf } from './usable.ts';

/** One recipe's pieces, by what may be done with them. */
export interface RecipeStock {
  readonly recipeId: string;
  readonly title: string;
  readonly pieceUnit: string;
  readonly usable: number;
  readonly setting: number;
  readonly frozen: number;
  readonly mustGo: number;
  /** Not served until a reading, a check of the label or staff's decision. */
  readonly held: number;
  /** What should be on the shelf, if the kitchen says; compared with what is in date: usable and setting. */
  readonly par?: number;
}

export interface StockView {
  /** May be served now, first expired first. */
  readonly usable: readonly Holding[];
  readonly setting: readonly Holding[];
  readonly frozen: readonly Holding[];
  /** Past its date or out too long. */
  readonly mustGo: readonly Holding[];
  /** In date, and not served until a reading, a check of the label or staff's decision. */
  readonly held: readonly Holding[];
  readonly lastDayToday: readonly Holding[];
  readonly lastDayTomorrow: readonly Holding[];
  /** Recipes in stock or with a par, those in stock first. */
  readonly recipes: readonly RecipeStock[];
}

/** What is there at an instant, sorted into what may be done with it. */
export function stockView(holdings: readonly Holding[], book: Book, nowMs: number): StockView {
  const { timeZone } = book.settings;
  const by = new Map<string, Holding[]>();
  for (const holding of firstOut(holdings)) {
    const standing = standingOf(holding, nowMs, timeZone);
    by.set(standing, [...(by.get(standing) ?? []), holding]);
  }
  const of = (...standings: string[]) => standings.flatMap((standing) => by.get(standing) ?? []);
  const usable = of('usable');
  const setting = of('setting', 'not_yet_made');
  const today = dateOf(nowMs, timeZone);
  const groups = {
    usable,
    setting,
    frozen: of('frozen'),
    mustGo: of('expired', 'out_too_long'),
    held: of('held'),
  };
  const lastOn = (day: string) =>
    [...usable, ...groups.held, ...setting].filter((holding) => holding.useBy === day);
  return {
    ...groups,
    lastDayToday: lastOn(today),
    lastDayTomorrow: lastOn(addDays(today, 1)),
    recipes: recipeStocks(groups, holdings, book),
  };
}

type Groups = Pick<StockView, 'usable' | 'setting' | 'frozen' | 'mustGo' | 'held'>;

function recipeStocks(groups: Groups, holdings: readonly Holding[], book: Book): RecipeStock[] {
  const { par } = book.settings;
  const inStock = new Map(holdings.map(({ batch }) => [batch.recipeId, batch]));
  const ids = new Set([...inStock.keys(), ...par.keys()]);
  return [...ids].map((recipeId) => {
    const of = (group: readonly Holding[]) => sumOf(group.filter(({ batch }) => batch.recipeId === recipeId));
    const should = par.get(recipeId);
    const recipe = book.recipes.get(recipeId);
    return {
      recipeId,
      title: inStock.get(recipeId)?.recipeTitle ?? recipe?.title ?? recipeId,
      pieceUnit: inStock.get(recipeId)?.pieceUnit ?? recipe?.pieceUnit ?? 'piece',
      usable: of(groups.usable),
      setting: of(groups.setting),
      frozen: of(groups.frozen),
      mustGo: of(groups.mustGo),
      held: of(groups.held),
      ...(should === undefined ? {} : { par: should }),
    };
  });
}

/** Recipes with fewer in date than the kitchen wants on its shelf. */
export const belowPar = (view: StockView): readonly RecipeStock[] =>
  view.recipes.filter(({ usable, setting, par }) => par !== undefined && usable + setting < par);

export const sumOf = (holdings: readonly Holding[]): number =>
  holdings.reduce((sum, holding) => sum + holding.pieces, 0);
