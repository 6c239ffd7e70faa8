import { placeName } from '../../../kitchen/stock/places.ts';
import {
  FREEZER_QUALITY_F,
  HOT_LIMIT_F,
  type Judged,
  type ReadingsLogged,
} from '../../../kitchen/stock/temperature.ts';
import type { Answer, Section } from '../../answer.ts';
import type { Asked } from '../../command.ts';
import { clockText, holdingData, holdingLine } from '../../stock/words.ts';
import { degrees } from './degrees.ts';

export const CANNOT_TELL =
  'Your local health code decides. I cannot tell whether food is fit to serve: the person in charge does.';

const HOUR_MS = 3_600_000;
const FREEZING_F = 32;
/** Time as a public health control: FDA Food Code model 3-501.19. Common practice takes it as the most that may have passed. */
const TOO_LONG_MS = 4 * HOUR_MS;

/** Each reading with its judgment; one that is too warm with what to do now. */
export function readingsAnswer(asked: Asked, { judged, again }: ReadingsLogged, atMs: number): Answer {
  const warm = judged.filter(({ above }) => above);
  const ended = again ? [] : judged.flatMap(heldForWarmth);
  const lines = judged.map(
    (each) =>
      `${degrees(each.tempF)} in ${nameOf(asked, each)}${each.above ? ', above 41 °F (5 °C): act now' : ''}`,
  );
  const note = warm.length > 0 ? '' : ` ${noteOf(judged) ?? 'At or below 41 °F (5 °C).'}`;
  return {
    title: `${lines.join('; ')}.${note} ${again ? 'Already logged.' : `Logged for ${clockText(asked, atMs)}.`}`,
    sections: [...warm.flatMap((each) => warmSections(asked, each, atMs)), ...endedSections(ended)],
    cautions: warm.length > 0 || ended.length > 0 ? [CANNOT_TELL] : [],
    next: (warm.length > 0 ? ['temperature log', 'stock'] : ['temperature log']).map((says) => ({
      label: says,
      says,
    })),
    audience: 'channel',
    data: {
      logged: !again,
      readings: judged.map(({ place, tempF, above, lastGood, holdings }) => ({
        location: place.id,
        tempF,
        above,
        ...(lastGood
          ? { lastGoodMs: lastGood.atMs, sinceGoodMin: Math.round((atMs - lastGood.atMs) / 60_000) }
          : {}),
        holdings: holdings.map(holdingData),
      })),
    },
  };
}

/** What was held for a warm reading and is cold again; nobody here knows how warm the food itself got. */
const heldForWarmth = ({ above, place, holdings }: Judged): Judged['holdings'] =>
  above || !('kind' in place) || place.kind !== 'fridge'
    ? []
    : holdings.filter(({ holds }) => holds?.some(({ kind }) => kind === 'warm'));

function endedSections(ended: Judged['holdings']): Section[] {
  if (ended.length === 0) return [];
  const codes = [...new Set(ended.map(({ batch }) => batch.code))].join(', ');
  return [
    {
      kind: 'text',
      text: `${codes} were held for a warm reading; this one ends it in the stock. If nobody can say how long it was warm, throw it out.`,
    },
  ];
}

const nameOf = (asked: Asked, { place }: Judged): string => placeName(asked.kitchen.book, place.id);

/** What is not above 41 °F and still worth a word. */
function noteOf(judged: readonly Judged[]): string | undefined {
  const hot = judged.find(({ place }) => place.id === 'hot_holding');
  if (hot) {
    return hot.tempF < HOT_LIMIT_F
      ? 'Below 135 °F (57 °C), too cool for hot holding: serve none of it and ask the person in charge.'
      : 'At or above 135 °F (57 °C).';
  }
  const freezer = judged.find(({ place }) => 'kind' in place && place.kind === 'freezer');
  if (freezer && freezer.tempF > FREEZING_F)
    return 'Above freezing: check that everything is still frozen hard.';
  if (freezer && freezer.tempF > FREEZER_QUALITY_F)
    return 'Above 0 °F (-18 °C), the quality figure: food must stay frozen.';
  if (judged.every(({ place }) => 'kind' in place && place.kind === 'room'))
    return 'Dry storage: no cold limit.';
  return undefined;
}

function warmSections(asked: Asked, judged: Judged, atMs: number): Section[] {
  const { lastGood, holdings } = judged;
  const since = lastGood ? atMs - lastGood.atMs : undefined;
  const isLong = since === undefined || since >= TOO_LONG_MS;
  const warning = isLong
    ? ' It may have been warm for 4 hours or more: without a record that it was cold in between, throw it out.'
    : '';
  return [
    doSection(asked, judged),
    { kind: 'text', text: `${sinceText(asked, lastGood, since)}${warning}` },
    ...(holdings.length > 0
      ? [
          {
            kind: 'list' as const,
            heading: 'In it: held, serve none',
            items: holdings.map((holding) => holdingLine(asked, holding)),
          },
        ]
      : [{ kind: 'text' as const, text: 'No batch is logged in it; other food may stand there.' }]),
  ];
}

/** What to do now; shorter when the person told what was done. */
function doSection(asked: Asked, judged: Judged): Section {
  const { place, tempF } = judged;
  const name = nameOf(asked, judged);
  const kind = 'kind' in place ? place.kind : 'fridge';
  const others = asked.kitchen.book.settings.locations
    .filter((each) => each.kind === kind && each.id !== place.id)
    .map((each) => each.name);
  const ask = 'Ask the person in charge. If nobody can say how long it was warm, throw it out.';
  const { action } = asked.slots;
  if (typeof action === 'string') {
    const items = [
      `Logged as done: ${action}.`,
      `${ask} Serve none of it until then.`,
      'Moved or threw out batches? Log that too, like "move 12 oat bars from fridge b to fridge a".',
    ];
    return { kind: 'list', items };
  }
  const where = others.length > 0 ? `${others.join(' or ')}, if it reads` : 'a unit that reads';
  return {
    kind: 'steps',
    heading: `Now, for ${name}`,
    items: [
      'Check with a second thermometer; close the door.',
      `Move the food to ${where} 41 °F (5 °C) or below; keep it apart and serve none of it.`,
      ask,
      `Write what you did: "${name.toLowerCase()} ${Math.round(tempF)}F moved all to ${(others[0] ?? 'the other fridge').toLowerCase()}".`,
    ],
  };
}

function sinceText(asked: Asked, lastGood: Judged['lastGood'], since: number | undefined): string {
  if (!lastGood || since === undefined) return 'No reading at 41 °F or below is logged in the last 31 days.';
  return `Last at 41 °F or below: ${degrees(lastGood.tempF)}, ${clockText(asked, lastGood.atMs)}, by ${lastGood.who}: ${durationText(since)} ago.`;
}

/** "7 h 15 min". */
export function durationText(ms: number): string {
  const minutes = Math.round(ms / 60_000);
  const hours = Math.floor(minutes / 60);
  if (hours >= 48) return `${Math.floor(hours / 24)} days`;
  if (hours === 0) return `${minutes} min`;
  return minutes % 60 === 0 ? `${hours} h` : `${hours} h ${minutes % 60} min`;
}
