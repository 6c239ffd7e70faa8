import type { WebClient } from '@slack/web-api';
import type { Chat } from '../../chat/chat.ts';
import type { Without } from '../../chat/home/home.ts';
import type { Clock } from '../../kitchen/kitchen.ts';
import { errorCode, retryAfterS } from '../errors.ts';
import type { InFlight } from '../in-flight.ts';
import type { Log } from '../log.ts';
import type { Person, Roles } from '../roles.ts';
import { homeView } from './home-view.ts';

/** Somebody who opened the home not long ago may still look at it. */
const LOOKED_AT_MS = 30 * 60_000;
const MOST_OPEN = 200;
/** Several things written down in a row are shown together. */
const TOGETHER_MS = 2_000;
/** `views.publish` takes about a hundred a minute for a workspace. */
const APART_MS = 650;
/** What other instances wrote, and what time alone changes, is looked for this often. */
const LOOK_MS = 2 * 60_000;
const LIMITED_PAUSE_S = 30;

interface Open {
  readonly person: Person;
  readonly client: WebClient;
  readonly without?: Without;
  readonly untilMs: number;
  /** What was shown last, without the time it was true. */
  readonly shown?: string;
}

/** The homes people are looking at. */
export interface HomeBoard {
  /** Shows somebody's home and keeps it up to date for a while; never throws. */
  opened(person: Person, client: WebClient): Promise<void>;
  /** The same home with what this person wants left out. */
  without(person: Person, client: WebClient, needs: Without): Promise<void>;
  /** Something was written down in this workspace: open homes follow shortly. */
  changed(workspace: string): void;
  /** Shows again whatever has changed by itself. */
  look(): Promise<void>;
  /** Shows nothing more: a home is drawn anew when it is opened next, so no stop waits for it. */
  rest(): void;
}

export interface BoardParts {
  readonly chat: Chat;
  readonly roles: Roles;
  readonly clock: Clock;
  readonly log: Log;
  readonly inFlight: InFlight;
  readonly wait: (ms: number) => Promise<void>;
}

export function createHomeBoard(parts: BoardParts): HomeBoard {
  const { chat, roles, clock, log, wait } = parts;
  const open = new Map<string, Open>();
  const waiting = new Set<string>();
  let passing: Promise<void> | undefined;
  let timer: NodeJS.Timeout | undefined;
  let isResting = false;

  const keyOf = ({ workspace, user }: Person): string => `${workspace}:${user}`;

  function keep(person: Person, client: WebClient, without?: Without): string {
    const key = keyOf(person);
    open.delete(key);
    const untilMs = clock.nowMs() + LOOKED_AT_MS;
    open.set(key, { person, client, untilMs, ...(without ? { without } : {}) });
    const oldest = open.keys().next();
    if (open.size > MOST_OPEN && !oldest.done) open.delete(oldest.value);
    timer ??= setInterval(() => void parts.inFlight.track(look(), 'homes'), LOOK_MS).unref();
    return key;
  }

  /** Draws one home and publishes it where it differs from what is shown. False when Slack asked for a pause. */
  async function show(key: string): Promise<boolean> {
    const entry = open.get(key);
    if (!entry) return true;
    const { person, client, without } = entry;
    try {
      const page = await chat.home(
        {
          text: '',
          asker: {
            role: await roles.roleOf(person, client),
            who: person.user,
            workspace: person.workspace,
          },
          conversation: `${person.workspace}:home:${person.user}`,
          isPrivate: true,
          nowMs: clock.nowMs(),
        },
        without,
      );
      const shown = JSON.stringify([page.title, page.parts]);
      if (entry.shown === shown) return true;
      await client.views.publish({ user_id: person.user, view: homeView(page) });
      if (open.get(key) === entry) open.set(key, { ...entry, shown });
      return true;
    } catch (error) {
      const seconds = retryAfterS(error);
      log.warn({ code: errorCode(error) }, 'a home was not shown');
      if (seconds === undefined) return true;
      waiting.add(key);
      await wait(Math.min(seconds, LIMITED_PAUSE_S) * 1000);
      return false;
    }
  }

  function forgetOld(): void {
    for (const [key, { untilMs }] of open) if (untilMs <= clock.nowMs()) open.delete(key);
    if (open.size > 0 || !timer) return;
    clearInterval(timer);
    timer = undefined;
  }

  /** One after the other, so that a busy kitchen stays within the limit; what changes meanwhile waits its turn. */
  async function pass(): Promise<void> {
    while (waiting.size > 0 && !isResting) {
      const [key] = waiting;
      if (key === undefined) return;
      waiting.delete(key);
      await show(key);
      if (waiting.size > 0) await wait(APART_MS);
    }
  }

  function passSoon(afterMs: number): Promise<void> {
    passing ??= (afterMs > 0 ? wait(afterMs) : Promise.resolve()).then(pass).finally(() => {
      passing = undefined;
    });
    return passing;
  }

  async function look(): Promise<void> {
    forgetOld();
    for (const key of open.keys()) waiting.add(key);
    await passSoon(0);
  }

  async function now(key: string): Promise<void> {
    if (!(await show(key))) await passSoon(0);
  }

  return {
    opened: (person, client) => now(keep(person, client, open.get(keyOf(person))?.without)),
    without: (person, client, needs) => now(keep(person, client, needs)),
    look,
    rest() {
      isResting = true;
      clearInterval(timer);
    },
    changed(workspace) {
      forgetOld();
      for (const [key, { person }] of open) if (person.workspace === workspace) waiting.add(key);
      if (waiting.size > 0 && !isResting) void parts.inFlight.track(passSoon(TOGETHER_MS), 'homes');
    },
  };
}
