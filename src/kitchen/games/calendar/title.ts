import type { Side } from '../game.ts';
import { sportIn, sportLeading } from './sports.ts';

/** What a title says of a game. */
export interface TitleReading {
  /** The title without marks of cancellation. */
  readonly title: string;
  readonly sport?: string;
  readonly opponent?: string;
  readonly side?: Side;
  readonly isCancelled: boolean;
  /** "TBA" said of the time, not of the opponent. */
  readonly timeNotAnnounced: boolean;
  /** Practice, lifting, a banquet: nothing to feed a bus for. */
  readonly isNoGame: boolean;
}

const OFF = '(?:cancell?ed|cancelation|cancellation|postponed|ppd\\.?|called off|rained out)';
const OFF_FIRST = new RegExp(`^[\\s*[(<-]*${OFF}[\\s*\\])>]*[:\\-–—|,!.\\s]+`, 'i');
const OFF_LAST = new RegExp(`[\\s:\\-–—|,]*[[(*-]*\\s*\\b${OFF}\\b[\\])*.!\\s]*$`, 'i');
const TBA = /\b(?:tba|tbd|tbc|to be (?:announced|determined|confirmed))\b/i;
const TIME_TBA =
  /\btime\W{0,3}(?:is )?(?:tba|tbd|tbc|to be (?:announced|determined|confirmed))\b|\b(?:tba|tbd|tbc)\W{0,2}time\b/i;
const NO_GAME =
  /\b(?:practices?|lift|lifting|weights|conditioning|meeting|banquet|photos?|media day|study hall|training table|camp|clinic|tryouts?|fundraiser|move-?in|travel day|day off|off day|bye(?: week)?|holiday|birthday|film|walk-?through)\b/i;
const GAME =
  /\b(?:vs?\.?|versus|against|game|match|meet|tournament|invitational|championships?|scrimmage|regatta|classic|cup|dual|duals|relays|finals?|semi-?finals?|open)\b|@/i;

/**
 * Reads a title the way feeds write them: "Soccer: Herons vs Riverton (Homecoming)", "CANCELLED: at Mill Bay",
 * "Riverton @ Alder Point", "Volleyball - Riverton (A)".
 * @param team the home team as the kitchen calls it; "at Alder Point" is then at home.
 */
export function readTitle(written: string, team: string): TitleReading {
  const plain = plainText(written);
  const title = plain.replace(OFF_FIRST, '').replace(OFF_LAST, '').trim() || plain;
  const isCancelled = title !== plain && new RegExp(OFF, 'i').test(plain);
  const { sport, rest } = sportLeading(title);
  const found = sport ?? sportIn(title);
  const pair = pairing(rest, team);
  const side = markedSide(title) ?? pair.side;
  return {
    title,
    ...(found === undefined ? {} : { sport: found }),
    ...(pair.opponent === undefined ? {} : { opponent: pair.opponent }),
    ...(side === undefined ? {} : { side }),
    isCancelled,
    timeNotAnnounced: timeNotAnnounced(title),
    isNoGame: NO_GAME.test(title) && !GAME.test(title.replace(/\bopen\b/gi, '')),
  };
}

/** Whether other text of the event says that its time is not announced. */
export const saysTimeTba = (text: string): boolean => TIME_TBA.test(text);

function plainText(text: string): string {
  return text
    .replace(/<[^>]*>/g, ' ')
    .replace(/&amp;/gi, '&')
    .replace(/&#0?39;|&apos;|&rsquo;/gi, "'")
    .replace(/&quot;/gi, '"')
    .replace(/&nbsp;/gi, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 200);
}

/** "vs TBD" is an opponent nobody knows yet; "TBA" elsewhere is the time. */
function timeNotAnnounced(title: string): boolean {
  if (TIME_TBA.test(title)) return true;
  return TBA.test(
    title.replace(
      /(?:\bvs?\.?|\bversus|\bat|@|\bagainst)\s+(?:the\s+)?(?:tba|tbd|tbc)\b(?:\s+(?:opponent|team))?/gi,
      ' ',
    ),
  );
}

function markedSide(title: string): Side | undefined {
  if (/\bneutral\b|\((?:n|neutral)\)/i.test(title)) return 'neutral';
  if (/\((?:a|away)\)|\[(?:a|away)\]|^\W*away\b\s*[:-]|[-–|]\s*away\s*$/i.test(title)) return 'away';
  if (/\((?:h|home)\)|\[(?:h|home)\]|^\W*home\b\s*[:-]|[-–|]\s*home\s*$/i.test(title)) return 'home';
  return undefined;
}

const BETWEEN = /^(.*?)\s*(?:\b(vs|v|versus|against)\b\.?|\b(at)\b|(@))\s+(.+)$/i;

function pairing(rest: string, team: string): { opponent?: string; side?: Side } {
  const match = BETWEEN.exec(rest);
  if (!match) {
    const name = nameOf(rest);
    return /\((?:a|h|n|away|home|neutral)\)/i.test(rest) && name !== undefined ? { opponent: name } : {};
  }
  const [, before = '', versus, , , after = ''] = match;
  const first = nameOf(before);
  const second = nameOf(after);
  const ours = isTeam(second, team);
  if (versus !== undefined) {
    const opponent = ours && first !== undefined ? first : second;
    return { ...known(opponent), side: 'home' };
  }
  if (ours) return { ...known(first), side: 'home' };
  return { ...known(second), side: 'away' };
}

const known = (opponent: string | undefined): { opponent?: string } =>
  opponent === undefined || /^(?:tba|tbd|tbc)$/i.test(opponent) ? {} : { opponent };

/** Any of the words of our team's name that are not also a common word of schools. */
function isTeam(name: string | undefined, team: string): boolean {
  if (name === undefined) return false;
  const ours = team.toLowerCase();
  const theirs = name.toLowerCase();
  if (ours === '') return false;
  return (
    ours === theirs ||
    ours.startsWith(`${theirs} `) ||
    ours.endsWith(` ${theirs}`) ||
    theirs.startsWith(`${ours} `)
  );
}

/** A team's name without rank, notes, times, channels and results. */
function nameOf(text: string): string | undefined {
  const name = text
    .replace(/\([^)]*\)|\[[^\]]*\]|\*+/g, ' ')
    .replace(/\s+(?:\bat\b|@)\s+.*$/i, ' ')
    .replace(/\s*[|•]\s*.*$/, ' ')
    .replace(/\s+[-–—]\s+.*$/, ' ')
    .replace(/[,;:]\s*(?:[WLT]\b|\d|tba|tbd).*$/i, ' ')
    .replace(/\s+[WLT],?\s+\d+\s*-\s*\d+.*$/, ' ')
    .replace(/\b\d{1,2}(?::\d{2})?\s*(?:am|pm)\b.*$/i, ' ')
    .replace(/^\s*(?:#\s*\d+|no\.\s*\d+|the)\s+/i, '')
    .replace(/\s+/g, ' ')
    .replace(/^[\s:,.-]+|[\s:,-]+$/g, '');
  return name === '' ? undefined : name;
}
