import { type Logger as BoltLogger, LogLevel } from '@slack/bolt';
import { type DestinationStream, pino } from 'pino';

/** What this room writes to its log: a few facts, then a fixed sentence. Never words or names of people. */
export interface Log {
  debug(facts: object, message: string): void;
  info(facts: object, message: string): void;
  warn(facts: object, message: string): void;
  error(facts: object, message: string): void;
}

/** Where people's words, names and our secrets live in Slack's payloads; redacted should one slip into a log line. */
const PERSONAL = ['text', 'value', 'blocks', 'user', 'user_id', 'user_name', 'token', 'response_url', 'body'];

/** A structured log that redacts what is personal. `destination` is for tests. */
export function createLog(level: string, destination?: DestinationStream): Log {
  const paths = PERSONAL.flatMap((field) => [field, `*.${field}`, `*.*.${field}`]);
  const options = { level, base: { room: 'slack' }, redact: { paths, censor: '[redacted]' } };
  return destination ? pino(options, destination) : pino(options);
}

/**
 * The same log for Bolt and its clients. Their debug lines quote whole payloads, so those are dropped at every level.
 */
export function boltLogger(log: Log): BoltLogger {
  const words = (parts: unknown[]): string => parts.map(String).join(' ');
  return {
    debug: () => {},
    info: (...parts) => log.debug({}, words(parts)),
    warn: (...parts) => log.warn({}, words(parts)),
    error: (...parts) => log.error({}, words(parts)),
    getLevel: () => LogLevel.INFO,
    setLevel: () => {},
    setName: () => {},
  };
}
