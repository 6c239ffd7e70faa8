import ICAL from 'ical.js';
import { isTimeZone } from '../../time/zone.ts';
import type { Block } from './blocks.ts';
import { windowsZone } from './windows-zones.ts';

/** How a zone name in a calendar is understood. */
export type Zone =
  | { readonly kind: 'iana'; readonly name: string }
  /** Only the file's own rules say what it is. */
  | { readonly kind: 'rules'; readonly timezone: ICAL.Timezone };

/** The zones of one calendar. What had to be assumed is told once, in `notes`. */
export class CalendarZones {
  readonly notes = new Set<string>();
  readonly #own: ReadonlyMap<string, Block>;
  readonly #kitchenZone: string;
  readonly #known = new Map<string, Zone>();

  constructor(blocks: readonly Block[], kitchenZone: string) {
    this.#kitchenZone = kitchenZone;
    this.#own = new Map(
      blocks
        .filter(({ kind }) => kind === 'VTIMEZONE')
        .map((block) => [plainId(valueIn(block, 'TZID') ?? ''), block]),
    );
  }

  /** The zone meant by a TZID: an IANA name, a Windows name, the file's own rules, else the kitchen's zone. */
  of(tzid: string): Zone {
    const id = plainId(tzid);
    const known = this.#known.get(id) ?? this.#understand(id);
    this.#known.set(id, known);
    return known;
  }

  #understand(id: string): Zone {
    const named = ianaZone(id);
    const own = this.#own.get(id);
    if (named !== undefined) {
      if (!own)
        this.notes.add(
          `The file does not describe its zone "${id}"; ${named} of the zone database was used.`,
        );
      else if (named !== id) this.notes.add(`The zone "${id}" was read as ${named}.`);
      return { kind: 'iana', name: named };
    }
    const location = own && valueIn(own, 'X-LIC-LOCATION');
    if (location && isTimeZone(location)) {
      this.notes.add(`The zone "${id}" was read as ${location}.`);
      return { kind: 'iana', name: location };
    }
    const timezone = own && withRules(own, id);
    if (timezone) return { kind: 'rules', timezone };
    const why = own ? 'has no rules in the file' : 'is not known';
    this.notes.add(
      `The zone "${id}" ${why}; its times were read in the kitchen's zone, ${this.#kitchenZone}.`,
    );
    return { kind: 'iana', name: this.#kitchenZone };
  }
}

/** An IANA or Windows zone by its name, also at the end of a vendor's path ("/example.org/2020/America/Chicago"). */
export function ianaZone(id: string): string | undefined {
  if (isTimeZone(id)) return id;
  const tail = /([A-Za-z_]+(?:\/[A-Za-z_+-]+)?\/[A-Za-z0-9_+-]+)$/.exec(id)?.[1];
  if (tail !== undefined && id.startsWith('/')) {
    const parts = tail.split('/');
    for (const name of [tail, parts.slice(-2).join('/')]) if (isTimeZone(name)) return name;
  }
  return windowsZone(id);
}

const plainId = (tzid: string): string => tzid.replace(/["']/g, '').trim().slice(0, 100);

function valueIn(block: Block, name: string): string | undefined {
  const line = block.lines.find(
    ({ text }) => text.toUpperCase().startsWith(`${name}:`) || text.toUpperCase().startsWith(`${name};`),
  );
  return line?.text.slice(line.text.indexOf(':') + 1).trim();
}

/** The file's own description of a zone, when it has at least one rule with an offset. */
function withRules(block: Block, tzid: string): ICAL.Timezone | undefined {
  try {
    const text = ['BEGIN:VTIMEZONE', ...block.lines.map((line) => line.text), 'END:VTIMEZONE'].join('\r\n');
    const component = new ICAL.Component(ICAL.parse(text));
    const rules = [
      ...component.getAllSubcomponents('standard'),
      ...component.getAllSubcomponents('daylight'),
    ];
    const whole = rules.every(
      (rule) =>
        rule.hasProperty('dtstart') && rule.hasProperty('tzoffsetto') && rule.hasProperty('tzoffsetfrom'),
    );
    return rules.length > 0 && whole ? new ICAL.Timezone({ component, tzid }) : undefined;
  } catch {
    return undefined;
  }
}
