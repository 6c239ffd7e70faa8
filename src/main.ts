import { calendarReach } from './calendar-reach.ts';
import { createChat, type ReportUnexpected } from './chat/chat.ts';
import { stoppedClock, systemClock } from './clock.ts';
import { type Config, readConfig } from './config.ts';
import type { Clock, Kitchen } from './kitchen/kitchen.ts';
import { Problem } from './nutrition/problem.ts';
import { openKitchen } from './open-kitchen.ts';
import { DEFAULT_FILE, lazyMemory, type Memory } from './open-memory.ts';
import { createReporter } from './report.ts';
import { openRosterFile } from './roster-reach.ts';
import type { SlackSettings } from './slack/settings.ts';
import type { StartParts } from './slack/start.ts';
import { bookProblemLines } from './terminal/book-problems.ts';
import type { SpeakUnasked } from './terminal/conversation.ts';
import { type Options, readOptions, USAGE } from './terminal/options.ts';
import { paint, screenOf } from './terminal/paint.ts';
import { createSession, type Session } from './terminal/session.ts';

/** Exit codes: 0 answered, 1 the one request could not be answered, 2 started wrongly, 3 stopped with work unfinished. */
async function main(): Promise<number> {
  const options = readOptions(process.argv.slice(2));
  if (options.mode === 'usage') return say(USAGE);
  const config = await readConfig(process.env);
  let clock: Clock = systemClock;
  const place = options.db ?? config.databaseUrl ?? DEFAULT_FILE;
  const memory = lazyMemory(place, () => clock.nowMs());
  try {
    if (options.mode === 'backup') {
      const { backUp } = await import('./back-up.ts');
      return say(await backUp(memory, place, options.text));
    }
    const servesSlack = options.mode === 'talk' && config.slack !== undefined;
    const kitchen = await kitchenFor(options, memory, !servesSlack);
    clock = kitchen.clock;
    return await serve(options, config, kitchen, memory);
  } finally {
    await memory.close();
  }
}

async function serve(options: Options, config: Config, kitchen: Kitchen, memory: Memory): Promise<number> {
  const report = createReporter(config.logLevel);
  if (options.mode === 'talk' && config.slack) {
    // In a workspace staff change the settings; at the terminal the kitchen's folder is at hand.
    return inSlack(config.slack, config, { ...kitchen, choices: memory.choices }, memory, report);
  }
  const chat = createChat(kitchen, report);
  const asker = { role: options.role, who: options.who, workspace: 'local' };
  const speakUnasked: SpeakUnasked = async (interject) => {
    const { speakReminders } = await import('./terminal-reminders.ts');
    const { workspace } = asker;
    return speakReminders(
      { kitchen, memory, workspace, report, isPreview: options.now !== undefined },
      interject,
    );
  };
  return atTerminal(options, kitchen, createSession(chat, kitchen.clock, asker), speakUnasked);
}

async function inSlack(
  settings: SlackSettings,
  { port, logLevel }: Config,
  kitchen: Kitchen,
  memory: Memory,
  report: ReportUnexpected,
): Promise<number> {
  const { serveSlack } = await import('./slack/serve.ts');
  const chat = createChat(kitchen, report);
  const startReminders: StartParts['startReminders'] = async (workspace, messenger) => {
    const reminding = await import('./remind.ts');
    return reminding.startReminders({ kitchen, memory, workspace, messenger, report });
  };
  return serveSlack({
    settings,
    port,
    chat,
    clock: kitchen.clock,
    logLevel,
    memory: memory.workspaces(settings.install?.tokenKeys ?? []),
    databaseAnswers: memory.answers,
    startReminders,
  });
}

async function kitchenFor(options: Options, memory: Memory, isTerminal: boolean): Promise<Kitchen> {
  const opened = await openKitchen(systemClock, options.kitchen, memory);
  const kitchen: Kitchen = {
    ...opened,
    calendars: calendarReach(isTerminal),
    ...(isTerminal ? { rosterFile: openRosterFile } : {}),
  };
  for (const line of bookProblemLines(kitchen.book.problems)) process.stderr.write(`${line}\n`);
  if (options.now === undefined) return kitchen;
  return { ...kitchen, clock: await stoppedClock(options.now, kitchen.book.settings.timeZone) };
}

async function atTerminal(
  options: Options,
  kitchen: Kitchen,
  session: Session,
  speakUnasked: SpeakUnasked,
): Promise<number> {
  const screen = () => screenOf(process.stdout, process.env);
  if (options.mode === 'once') {
    const reply = await session.ask(options.text);
    say(paint(reply, screen()));
    if (reply.answer?.attachments) {
      const { saveAttachments } = await import('./terminal/save-attachments.ts');
      for (const line of await saveAttachments(reply.answer)) say(line);
    }
    return reply.error ? 1 : 0;
  }
  if (options.mode === 'lines') {
    const { answerLines, jsonOf, paragraphOf } = await import('./terminal/answer-lines.ts');
    await answerLines(session, process.stdin, process.stdout, options.json ? jsonOf : paragraphOf(screen()));
    return 0;
  }
  const { converse } = await import('./terminal/conversation.ts');
  await converse(
    session,
    kitchen.book.settings.name,
    { input: process.stdin, output: process.stdout },
    screen,
    speakUnasked,
  );
  return 0;
}

function say(text: string): number {
  process.stdout.write(`${text}\n`);
  return 0;
}

// A reader that has gone ("| head") is not an error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

try {
  process.exitCode = await main();
} catch (error) {
  if (!(error instanceof Problem)) throw error;
  process.stderr.write(`${error.message}\n${error.hint}\n`);
  process.exitCode = 2;
}
