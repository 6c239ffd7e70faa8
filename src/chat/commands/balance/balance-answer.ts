import type { Need } from '../../../nutrition/allergens.ts';
import type { BalanceAnswer, BalancedMix } from '../../../nutrition/balance/balance.ts';
import type { Fighter } from '../../../nutrition/balance/conflict.ts';
import type { Limit } from '../../../nutrition/balance/question.ts';
import type { Recipe } from '../../../nutrition/recipe.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { CROSS_CONTACT, isAllergy, listed, reactionCaution } from '../../need-words.ts';
import { seesEnergy, whereEnergyIs } from '../../quiet-numbers.ts';
import { thousandth } from '../macros/figures.ts';
import { allergenLine } from '../scale/allergen-line.ts';
import { pluralOf } from '../scale/batch-words.ts';
import { effectLines, lineText } from '../swap/offer-text.ts';
import { isEnergy, limitWords, reachedLine, valueWords } from './limit-words.ts';
import { amountsTable, changedLines, figuresTable, pieceFigures, sensitivityLine } from './mix-sections.ts';
import type { Start } from './start-recipe.ts';

/** All that a balanced answer is told from. */
export interface Telling {
  readonly asked: Asked;
  /** The recipe as the book has it. */
  readonly original: Recipe;
  readonly start: Start;
  readonly needs: readonly Need[];
  readonly limits: readonly Limit[];
  readonly pieces: number;
  readonly mixes: number;
  readonly answer: BalanceAnswer;
}

/** The balanced mix, or what fights and the nearest that works. Only the asker sees what was asked for a need. */
export function balanceAnswer(telling: Telling): Answer {
  const { asked, answer, needs } = telling;
  const { settings } = asked.kitchen.book;
  const mix = answer.kind === 'balanced' ? answer.mix : answer.nearest;
  const energyShown = seesEnergy(asked.request, settings);
  return {
    title: titleOf(telling, mix, energyShown),
    sections: mix ? mixSections(telling, mix, energyShown) : [],
    cautions: [
      ...(mix ? ['A changed recipe: try a small mix first and judge the dough before the batch.'] : []),
      ...(needs.length > 0 ? [CROSS_CONTACT] : []),
      ...(isAllergy(needs) ? [reactionCaution(settings)] : []),
    ],
    next: nextOf(telling),
    audience: needs.length > 0 ? 'asker' : 'channel',
    data: {
      balanced: answer.kind === 'balanced',
      recipe: telling.original.id,
      pieces: telling.pieces,
      mixes: telling.mixes,
      ...(mix ? mixData(telling, mix, energyShown) : {}),
      ...(answer.kind === 'infeasible'
        ? { fighting: answer.fighters.map((fighter) => fighterWords(telling, fighter, energyShown)) }
        : {}),
    },
  };
}

function titleOf(telling: Telling, mix: BalancedMix | undefined, energyShown: boolean): string {
  const { answer, original } = telling;
  const figures = mix ? reachedWords(mix, energyShown) : '';
  if (answer.kind === 'balanced') {
    const changed = changedLines(answer.mix).filter((line) => line.changed);
    const how =
      changed.length === 0
        ? 'nothing to change'
        : changed.map(({ name, was, now }) => `${name} ${was} → ${now}`).join('; ');
    return `${figures} a ${original.pieceUnit}, ${original.title}: ${how}.`;
  }
  const fighters = answer.fighters.map((fighter) => fighterWords(telling, fighter, energyShown));
  const why =
    fighters.length === 0
      ? 'These hold only in grams that no kitchen measure hits'
      : `These do not go together: ${listed(fighters)}`;
  return `${why}.${figures === '' ? '' : ` Nearest that works: ${figures} a ${original.pieceUnit}.`}`;
}

/** The asked figures as reached; a holder of calories that may not be shown is left out. */
const reachedWords = (mix: BalancedMix, energyShown: boolean): string =>
  listed(
    mix.limits
      .filter(({ limit }) => limit.from === 'asked' && (energyShown || !isEnergy(limit.measure)))
      .filter(({ limit }, at, all) => all.findIndex((o) => sameMeasure(o.limit, limit)) === at)
      .flatMap(({ after, limit }) => (after === undefined ? [] : [valueWords(after, limit.measure)])),
  ) || 'Every limit holds for';

const sameMeasure = (a: Limit, b: Limit): boolean => JSON.stringify(a.measure) === JSON.stringify(b.measure);

function fighterWords({ asked }: Telling, fighter: Fighter, energyShown: boolean): string {
  if (fighter.kind === 'texture') return 'wet over dry as the recipe has it';
  if (fighter.kind === 'ingredients') {
    const { whole_of: food, whole_unit: unit } = asked.slots;
    const name = typeof food === 'string' ? asked.kitchen.book.foods.get(food)?.name : undefined;
    const whole = name === undefined ? '' : `, ${name} by the whole ${unit}`;
    return `every ingredient between half and twice its amount${whole}`;
  }
  return !energyShown && isEnergy(fighter.limit.measure) ? 'the calorie limit' : limitWords(fighter.limit);
}

function mixSections(telling: Telling, mix: BalancedMix, energyShown: boolean): Section[] {
  const { asked, original, start } = telling;
  const { book } = asked.kitchen;
  const lines = changedLines(mix);
  return [
    ...(start.offer ? swapSection(start.offer) : []),
    amountsTable(lines, amountsHeading(telling)),
    {
      kind: 'list',
      heading: telling.answer.kind === 'balanced' ? 'Limits' : 'Limits the nearest mix keeps',
      items: limitLines(telling, mix, energyShown),
    },
    figuresTable(pieceFigures(original, mix, book, energyShown), original.pieceUnit),
    ...[
      rangeEndLine(mix),
      sensitivityLine(mix, firstNutrient(telling, energyShown)),
      allergenLine(start.recipe, book),
      ...whereEnergyIs(asked.request, book.settings),
    ].flatMap((text): Section[] => (text === undefined ? [] : [{ kind: 'text', text }])),
  ];
}

/** A line for every limit; the recipe's own texture is one, and a limit that gave way says what was asked. */
function limitLines({ limits: asked }: Telling, mix: BalancedMix, energyShown: boolean): string[] {
  const lines = mix.limits
    .filter(({ limit }) => limit.from === 'asked')
    .map((one, at) => {
      const wanted = asked[at];
      const gaveWay = wanted !== undefined && wanted.amount !== one.limit.amount;
      if (!energyShown && isEnergy(one.limit.measure))
        return gaveWay ? 'The calorie limit: not as asked.' : 'The calorie limit: held.';
      return `${reachedLine(one)}${gaveWay ? ` Asked: ${limitWords(wanted)}.` : ''}`;
    });
  return [...lines, ...textureLine(mix)];
}

function textureLine({ limits }: BalancedMix): string[] {
  const texture = limits.filter(({ limit }) => limit.from === 'texture');
  const [low, high] = texture;
  if (!low || !high || low.before === undefined || low.after === undefined) return [];
  const decides = texture.some(({ binds }) => binds) ? ' This one decides the mix.' : '';
  const [after, before, least, most] = [low.after, low.before, low.limit.amount, high.limit.amount].map(
    (ratio) => Number(ratio.toFixed(2)),
  );
  return [
    `Wet over dry ${after} (was ${before}), where this dough holds together: ${least} to ${most}.${decides}`,
  ];
}

const swapSection = (offer: NonNullable<Start['offer']>): Section[] => [
  { kind: 'list', heading: 'Swapped first', items: [...offer.swaps.map(lineText), ...effectLines(offer)] },
];

function amountsHeading({ pieces, mixes, original }: Telling): string {
  const all = `For ${pieces} ${pluralOf(original.pieceUnit, pieces)}`;
  return mixes > 1 ? `${all}: one of ${mixes} equal mixes` : all;
}

/** What went as far as it may: the person may want to let it go further. */
function rangeEndLine({ mix, atRangeEnd }: BalancedMix): string | undefined {
  if (atRangeEnd.length === 0) return undefined;
  const names = listed(atRangeEnd.flatMap((at) => mix.lines[at]?.food.name ?? []));
  return `As far as it may go: ${names}. Unless you say otherwise, no ingredient goes below half or above twice.`;
}

/** Sensitivity is told for what was asked, protein when that is no nutrient one may see. */
function firstNutrient({ limits }: Telling, energyShown: boolean) {
  for (const { measure } of limits)
    if (measure.kind === 'nutrient' && (energyShown || measure.key !== 'energyKcal')) return measure.key;
  return 'proteinG' as const;
}

function mixData({ original, asked }: Telling, mix: BalancedMix, energyShown: boolean) {
  const figures = pieceFigures(original, mix, asked.kitchen.book, energyShown);
  return {
    amounts: changedLines(mix).map(({ foodId, was, now, wasG, nowG }) => ({
      foodId,
      was,
      now,
      wasG: thousandth(wasG),
      nowG: thousandth(nowG),
    })),
    perPiece: Object.fromEntries(
      figures.map(({ key, before, after }) => [
        key,
        { before: thousandth(before), after: thousandth(after) },
      ]),
    ),
    limits: mix.limits
      .filter(({ limit }) => energyShown || !isEnergy(limit.measure))
      .map(({ limit, after, binds }) => ({ limit: limitWords(limit), after: thousandth(after), binds })),
    change: thousandth(mix.change),
  };
}

function nextOf({ asked, original, answer }: Telling): Answer['next'] {
  const { text } = asked.request;
  const sure = asked.slots.even_if_scooped === true || text === '' || answer.kind !== 'balanced';
  const says = [
    ...(sure ? [] : [`${text.replace(/[.?!\s]+$/, '')} even if scooped`]),
    `macros ${original.title}`,
  ];
  return says.map((each) => ({ label: each, says: each }));
}
