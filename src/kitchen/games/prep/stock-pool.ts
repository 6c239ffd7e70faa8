import type { Holding } from '../../stock/ledger.ts';
import { usableAt } from '../../stock/usable.ts';
import { type CalendarDate, dateOf } from '../../time/zone.ts';

/** Pieces not yet promised to a game. */
interface Share {
  readonly recipeId: string;
  readonly useBy?: CalendarDate;
  readonly isUsableAt: (ms: number) => boolean;
  pieces: number;
}

export interface Taken {
  readonly pieces: number;
  /** The first of the use-by dates of what was taken. */
  readonly useBy?: CalendarDate;
}

/** Stock that games are served from: what ends first is taken first, and nothing is promised twice. */
export class StockPool {
  readonly #shares: Share[];
  readonly #zone: string;

  constructor(holdings: readonly Holding[], zone: string) {
    this.#zone = zone;
    this.#shares = holdings.map((holding) => ({
      recipeId: holding.batch.recipeId,
      ...(holding.useBy === undefined ? {} : { useBy: holding.useBy }),
      isUsableAt: (ms) => usableAt(holding, ms, zone),
      pieces: holding.pieces,
    }));
  }

  /** Puts in what an earlier batch makes beyond its own games. */
  add(recipeId: string, pieces: number, readyMs: number, useBy: CalendarDate | undefined): void {
    if (pieces <= 0) return;
    this.#shares.push({
      recipeId,
      ...(useBy === undefined ? {} : { useBy }),
      isUsableAt: (ms) => ms >= readyMs && (useBy === undefined || dateOf(ms, this.#zone) <= useBy),
      pieces,
    });
  }

  /** Takes up to `wanted` pieces that are set and in date at `atMs`. */
  take(recipeId: string, wanted: number, atMs: number): Taken {
    const fitting = this.#shares
      .filter((share) => share.recipeId === recipeId && share.pieces > 0 && share.isUsableAt(atMs))
      .sort((a, b) => ((a.useBy ?? '9999') < (b.useBy ?? '9999') ? -1 : 1));
    let pieces = 0;
    let useBy: CalendarDate | undefined;
    for (const share of fitting) {
      const part = Math.min(share.pieces, wanted - pieces);
      if (part <= 0) break;
      share.pieces -= part;
      pieces += part;
      useBy ??= share.useBy;
    }
    return { pieces, ...(useBy === undefined ? {} : { useBy }) };
  }
}
