import type { Book } from '../../nutrition/book.ts';
import { type Cover, type CoverVariant, coverProfiles } from '../../nutrition/cover/cover.ts';
import { suits, unionOf } from '../../nutrition/cover/profile.ts';
import type { Recipe } from '../../nutrition/recipe.ts';
import { type ScaledRecipe, scaleRecipe } from '../../nutrition/scale/scale-recipe.ts';
import { daysOf, HANDS_ON_MIN, type PrepDay, prepDay, useByOf } from '../games/prep/prep-day.ts';
import { type CalendarDate, dateOf } from '../time/zone.ts';
import { bringsOnlyApproved, cardsToPlan, reservations } from './cards.ts';
import type { Eaters } from './eaters.ts';
import { reluctanceOf } from './familiar.ts';
import { type FromStock, type OnHand, onHandFor } from './on-hand.ts';
import type { ProductionQuestion } from './question.ts';
import { type Timeline, timelineOf, type WorkTimes } from './timeline.ts';

/** One variant with how much of it there is and is made, and for whom. */
export interface PlannedVariant extends CoverVariant {
  readonly eaters: readonly Eaters[];
  readonly people: number;
  /** Pieces people get, and those pieces with the spares. */
  readonly needed: number;
  readonly wanted: number;
  /** The same from earlier batches, in date on the day. */
  readonly fromStock: readonly FromStock[];
  /** What is made: whole slabs, or whole batches of what has no pan; 0 when stock is enough. */
  readonly made: number;
  readonly slabs: number;
  /** Absent when nothing is made. */
  readonly work?: VariantWork;
}

/** Making one variant. Instants are epoch milliseconds. */
export interface VariantWork {
  readonly scaled: ScaledRecipe;
  readonly startMs: number;
  readonly mixedMs: number;
  readonly setMs: number;
  readonly waitedForRoom: boolean;
  readonly useBy?: CalendarDate;
}

export interface ProductionPlan {
  readonly people: number;
  /** In the order they are made: what avoids most first. */
  readonly variants: readonly PlannedVariant[];
  /** People no recipe suits, and people of whom nothing can be checked. */
  readonly unfed: readonly Eaters[];
  readonly unchecked: readonly Eaters[];
  readonly isFewest: boolean;
  readonly startMs: number;
  readonly latestStartMs: number;
  readonly timeline: Timeline;
  /** Pans the refrigerators take; undefined when nobody has said. */
  readonly room?: number;
  readonly conflicts: readonly string[];
}

/**
 * What to make so that everybody is fed from the fewest variants, how much, in which order and when. Who is fed by
 * nothing is told apart.
 */
export async function productionPlan(question: ProductionQuestion): Promise<ProductionPlan> {
  const cover = await coverOf(question);
  const { holdings, promised, date, packAtMs, book } = question;
  const onHand = onHandFor({ holdings, promised, date, packAtMs, timeZone: book.settings.timeZone });
  const sized = shared(question, cover)
    .map((variant) => sizedOf(question, variant, onHand))
    .sort(mostRestrictedFirst);
  return timed(question, cover, sized);
}

/** Variants of what was asked for; of the others only what feeds those whom it cannot be made to suit. */
async function coverOf(question: ProductionQuestion): Promise<Cover> {
  const { book, eaters, recipeId } = question;
  const cards = cardsToPlan(question);
  const asked = cards.filter(({ id }) => id === recipeId);
  const coverWith = (from: readonly Recipe[], profiles: readonly Eaters[]) =>
    coverProfiles({
      cards: from,
      foods: book.foods,
      recipes: book.recipes,
      list: book.settings.allergenList,
      profiles,
      reluctance: reluctanceOf(question),
      allows: (card, recipe) => bringsOnlyApproved(question, card, recipe),
    });
  const first = await coverWith(asked.length > 0 ? asked : cards, eaters);
  if (asked.length === 0 || first.unfed.length === 0) return first;
  const others = await coverWith(
    cards,
    first.unfed.flatMap((at) => eaters[at] ?? []),
  );
  const place = (at: number) => first.unfed[at] ?? at;
  return {
    variants: [
      ...first.variants,
      ...others.variants.map((variant) => ({ ...variant, serves: variant.serves.map(place) })),
    ],
    unfed: others.unfed.map(place),
    unchecked: first.unchecked,
    isFewest: first.isFewest && others.isFewest,
  };
}

interface Shared extends CoverVariant {
  readonly eaters: readonly Eaters[];
}

/** The groups of each variant: as the cover gives them, but who likes another of the variants and may eat it gets it. */
function shared({ eaters, book }: ProductionQuestion, { variants }: Cover): Shared[] {
  const given = variants.map((): Eaters[] => []);
  for (const [at, variant] of variants.entries()) {
    for (const place of variant.serves) {
      const group = eaters[place];
      if (!group) continue;
      const liked = variants.findIndex(
        ({ card, recipe }) => group.likes.includes(card.id) && suits(recipe, book.foods, group),
      );
      given[liked < 0 ? at : liked]?.push(group);
    }
  }
  return variants.flatMap((variant, at) => {
    const groups = given[at] ?? [];
    return groups.length > 0 ? [{ ...variant, eaters: groups }] : [];
  });
}

interface Sized extends Shared {
  readonly people: number;
  readonly needed: number;
  readonly wanted: number;
  readonly fromStock: readonly FromStock[];
  readonly made: number;
  readonly slabs: number;
  readonly scaled?: ScaledRecipe;
}

function sizedOf({ book }: ProductionQuestion, variant: Shared, onHand: OnHand): Sized {
  const { recipe, eaters } = variant;
  const needed = eaters.reduce((sum, { people, piecesEach }) => sum + people * piecesEach, 0);
  const wanted = Math.ceil(needed * (1 + book.settings.spareShare) - 1e-9);
  const fromStock = onHand.take(variant, unionOf(eaters), wanted);
  const missing = wanted - fromStock.reduce((sum, { pieces }) => sum + pieces, 0);
  const slabs = Math.ceil(missing / recipe.yieldPieces);
  const made = slabs * recipe.yieldPieces;
  const target = { kind: 'pieces', pieces: made } as const;
  const scaled = made > 0 ? scaleRecipe(recipe, book.foods, target, { pans: book.settings.pans }) : undefined;
  const people = eaters.reduce((sum, each) => sum + each.people, 0);
  return { ...variant, people, needed, wanted, fromStock, made, slabs, ...(scaled ? { scaled } : {}) };
}

/** What has to be kept free of most is made on the cleanest bench. */
function mostRestrictedFirst(a: Sized, b: Sized): number {
  const avoided = ({ eaters }: Sized) => {
    const { avoid, foods } = unionOf(eaters);
    return avoid.length + foods.length;
  };
  return avoided(b) - avoided(a) || a.people - b.people || (a.recipe.id < b.recipe.id ? -1 : 1);
}

function timed(question: ProductionQuestion, cover: Cover, sized: readonly Sized[]): ProductionPlan {
  const { book, eaters, nowMs } = question;
  const room = roomFor(book);
  const toMake = sized.filter(({ made }) => made > 0);
  const timeline = timelineOf(
    toMake.map(({ recipe, scaled }) => ({
      mixes: scaled?.mixes.count ?? 0,
      pans: recipe.storage === 'room' ? 0 : (scaled?.slabs?.pans ?? 0),
      setMin: recipe.set?.leastMin ?? 0,
    })),
    room,
  );
  const day = dayFor(question, toMake, timeline);
  const startMs = nowMs > day.prepAtMs && nowMs <= day.latestStartMs ? nowMs : day.prepAtMs;
  return {
    people: eaters.reduce((sum, { people }) => sum + people, 0),
    variants: sized.map((each) => plannedOf(each, timeline.works[toMake.indexOf(each)], startMs, book)),
    unfed: cover.unfed.flatMap((at) => eaters[at] ?? []),
    unchecked: cover.unchecked.flatMap((at) => eaters[at] ?? []),
    isFewest: cover.isFewest,
    startMs,
    latestStartMs: day.latestStartMs,
    timeline,
    ...(room === undefined ? {} : { room }),
    conflicts: [...toMake.flatMap(({ recipe }) => reservations(question, recipe)), ...day.conflicts],
  };
}

/** The day on which all of it is made, as if it were one recipe: the one that keeps the shortest, set when all is. */
function dayFor(
  { book, date, packAtMs }: ProductionQuestion,
  sized: readonly Sized[],
  { lengthMin }: Timeline,
): PrepDay {
  const keeps = ({ recipe }: Sized) => daysOf(recipe, book.settings) ?? recipe.shelfLifeDays;
  const [shortest] = [...sized].sort((a, b) => keeps(a) - keeps(b));
  if (!shortest) return { prepAtMs: packAtMs, latestStartMs: packAtMs, reasons: [], conflicts: [] };
  const setMin = Math.max(0, lengthMin - HANDS_ON_MIN);
  const asOne = { ...shortest.recipe, set: { leastMin: setMin, betterMin: setMin } };
  return prepDay(asOne, date, packAtMs, book.settings);
}

function plannedOf(
  { scaled, ...variant }: Sized,
  times: WorkTimes | undefined,
  startMs: number,
  { settings }: Book,
): PlannedVariant {
  if (!scaled || !times) return variant;
  const at = (min: number) => startMs + min * 60_000;
  const useBy = useByOf(variant.recipe, settings, dateOf(at(times.startMin), settings.timeZone));
  return {
    ...variant,
    work: {
      scaled,
      startMs: at(times.startMin),
      mixedMs: at(times.mixedMin),
      setMs: at(times.setMin),
      waitedForRoom: times.waited,
      ...(useBy === undefined ? {} : { useBy }),
    },
  };
}

/** Undefined unless every refrigerator says how many pans it takes. */
function roomFor({ settings }: Book): number | undefined {
  const fridges = settings.locations.filter(({ kind }) => kind === 'fridge');
  if (fridges.length === 0 || fridges.some(({ pans }) => pans === undefined)) return undefined;
  return fridges.reduce((sum, { pans = 0 }) => sum + pans, 0);
}
