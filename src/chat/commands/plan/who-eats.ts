import { type Eaters, rosterEaters, type SaidNeed, saidEaters } from '../../../kitchen/production/eaters.ts';
import type { PersonNeeds } from '../../../kitchen/roster/roster.ts';
import { NEEDS, type Need } from '../../../nutrition/allergens.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Asked } from '../../command.ts';
import { listed, needName, needsOf } from '../../need-words.ts';
import { slotNumber } from '../../slot-number.ts';
import type { Slots } from '../../slots.ts';
import type { Occasion } from './occasion.ts';

export interface WhoEats {
  readonly eaters: readonly Eaters[];
  /** What had to be taken for granted, one line each. */
  readonly assumed: readonly string[];
  /** What the roster holds and nobody said: told before anything is made. */
  readonly warnings: readonly string[];
}

/** Everybody of a plan by what they avoid: as said, else by the roster. Throws a Problem for counts that do not add up. */
export function whoEats(
  asked: Asked,
  { game }: Occasion,
  roster: readonly PersonNeeds[] | undefined,
): WhoEats {
  const { slots, kitchen } = asked;
  const { settings } = kitchen.book;
  refuseUnclear(slots);
  const needs = saidNeeds(slots.needs);
  const piecesEach = slotNumber(slots, 'portion') ?? settings.piecesPerPerson;
  const { team, isTeam } = teamOf(roster ?? [], game?.sport ?? slots.sport);
  const said = typeof slots.quantity === 'number' ? slots.quantity : undefined;
  const people = said ?? game?.people ?? (isTeam ? team.length : undefined) ?? settings.gamePeople;
  if (people === undefined)
    throw new Problem('needs_more', 'For how many people?', 'Write it: "plan saturday 44 travelling".');
  const usual =
    said === undefined && game?.people === undefined
      ? [`${people} people: ${isTeam ? 'the team on the roster' : 'the usual number'}.`]
      : [];
  if (needs.length > 0 || team.length === 0) {
    return {
      eaters: saidEaters(people, needs, piecesEach),
      assumed: [
        ...usual,
        ...(needs.length === 0
          ? ['Nobody said a need and the roster has none: everybody eats everything.']
          : []),
        ...(roster === undefined ? ['The roster could not be read.'] : []),
      ],
      warnings: unsaid(team, needs),
    };
  }
  const needing = team.filter(({ avoid, foods }) => avoid.length + foods.length > 0).length;
  return {
    eaters: rosterEaters(people, team, piecesEach),
    assumed: [...usual, `All ${needing} with needs on the roster are among them.`],
    warnings: [],
  };
}

function saidNeeds(slot: unknown): SaidNeed[] {
  if (!Array.isArray(slot)) return [];
  return slot.flatMap((each) =>
    typeof each === 'object' && each !== null && typeof each.people === 'number'
      ? [{ avoid: needsOf(each.avoid), foods: words(each.foods), people: each.people }]
      : [],
  );
}

const words = (slot: unknown): string[] => (Array.isArray(slot) ? slot.map(String) : []);

/** A number nobody can place may be people who would get nothing. */
function refuseUnclear({ unclear }: Slots): void {
  const said = words(unclear);
  if (said.length === 0) return;
  throw new Problem(
    'needs_more',
    `I cannot place ${listed(said.map((each) => `"${each}"`))} in this plan.`,
    'Write everybody in the first number, then each need with its count, and pieces like "2 each": "plan saturday 44 travelling 5 nut free 2 coeliac 1 sesame, 2 each".',
  );
}

/** The people of the sport, where the roster names teams; else everybody. */
function teamOf(
  roster: readonly PersonNeeds[],
  sport: unknown,
): { team: readonly PersonNeeds[]; isTeam: boolean } {
  const word = typeof sport === 'string' ? sport.toLowerCase().replaceAll('_', ' ') : undefined;
  const team = word === undefined ? [] : roster.filter(({ team: name }) => name?.toLowerCase() === word);
  return team.length > 0 ? { team, isTeam: true } : { team: roster, isTeam: false };
}

/** Needs of the roster that no count said covers. */
function unsaid(team: readonly PersonNeeds[], needs: readonly SaidNeed[]): string[] {
  const covered = new Set(needs.flatMap(({ avoid }) => avoid));
  const missing = NEEDS.filter((need) => !covered.has(need)).flatMap((need: Need) => {
    const count = team.filter(({ avoid }) => avoid.includes(need)).length;
    return count > 0 ? [`${needName(need)} (${count})`] : [];
  });
  return missing.length === 0
    ? []
    : [`The roster also lists ${listed(missing)}, which was not said. If they come along, say them too.`];
}
