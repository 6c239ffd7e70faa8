import { describe, expect, test } from 'vitest';
import { stoppedClock } from '../src/clock.ts';

const at = async (when: string, zone = 'America/Chicago'): Promise<string> =>
  new Date((await stoppedClock(when, zone)).nowMs()).toISOString();

describe('--now', () => {
  test('an instant is itself in every zone', async () => {
    expect(await at('2026-10-30T19:00:00Z')).toBe('2026-10-30T19:00:00.000Z');
    expect(await at('2026-10-30T14:00:00-05:00', 'Asia/Tokyo')).toBe('2026-10-30T19:00:00.000Z');
  });

  test('a local date-time is read in the kitchen’s zone', async () => {
    expect(await at('2026-10-30T14:00')).toBe('2026-10-30T19:00:00.000Z');
    expect(await at('2026-10-30 14:00', 'Europe/London')).toBe('2026-10-30T14:00:00.000Z');
  });

  // RFC 5545 section 3.3.5: a time in the gap uses the offset before it, a repeated time is the first.
  test('the hour a clock change skips or repeats is resolved', async () => {
    expect(await at('2026-03-08T02:30')).toBe('2026-03-08T08:30:00.000Z');
    expect(await at('2026-11-01T01:30')).toBe('2026-11-01T06:30:00.000Z');
  });

  test.each(['tomorrow', '2026-13-01T10:00', '2026-10-30', '', '2026-02-30T10:00', '14:00'])(
    '"%s" is refused',
    async (when) => {
      await expect(stoppedClock(when, 'America/Chicago')).rejects.toMatchObject({ code: 'bad_option' });
    },
  );
});
