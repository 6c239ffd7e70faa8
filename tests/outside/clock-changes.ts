export const QUARTER_MS = 15 * 60_000;

/**
 * Clock changes 2026 to 2028: [zone, instant of change (UTC), minutes of offset before, after].
 * Source: IANA tz database 2025b, rules US (second Sunday of March to first Sunday of November, 02:00 local),
 * EU/GB-Eire (last Sundays of March and October, 01:00 UTC), LH (first Sundays of October and April, 02:00 local,
 * half an hour). America/Phoenix has none.
 */
export const CHANGES: readonly (readonly [string, string, number, number])[] = [
  ['America/Chicago', '2026-03-08T08:00', -360, -300],
  ['America/Chicago', '2026-11-01T07:00', -300, -360],
  ['America/Chicago', '2027-03-14T08:00', -360, -300],
  ['America/Chicago', '2027-11-07T07:00', -300, -360],
  ['America/Chicago', '2028-03-12T08:00', -360, -300],
  ['America/Chicago', '2028-11-05T07:00', -300, -360],
  ['America/New_York', '2026-03-08T07:00', -300, -240],
  ['America/New_York', '2026-11-01T06:00', -240, -300],
  ['America/New_York', '2027-03-14T07:00', -300, -240],
  ['America/New_York', '2027-11-07T06:00', -240, -300],
  ['America/New_York', '2028-03-12T07:00', -300, -240],
  ['America/New_York', '2028-11-05T06:00', -240, -300],
  ['Europe/London', '2026-03-29T01:00', 0, 60],
  ['Europe/London', '2026-10-25T01:00', 60, 0],
  ['Europe/London', '2027-03-28T01:00', 0, 60],
  ['Europe/London', '2027-10-31T01:00', 60, 0],
  ['Europe/London', '2028-03-26T01:00', 0, 60],
  ['Europe/London', '2028-10-29T01:00', 60, 0],
  ['Australia/Lord_Howe', '2026-04-04T15:00', 660, 630],
  ['Australia/Lord_Howe', '2026-10-03T15:30', 630, 660],
  ['Australia/Lord_Howe', '2027-04-03T15:00', 660, 630],
  ['Australia/Lord_Howe', '2027-10-02T15:30', 630, 660],
  ['Australia/Lord_Howe', '2028-04-01T15:00', 660, 630],
  ['Australia/Lord_Howe', '2028-09-30T15:30', 630, 660],
  ['America/Phoenix', '2026-03-08T08:00', -420, -420],
  ['America/Phoenix', '2027-11-07T07:00', -420, -420],
];

/** RFC 5545 §3.3.5 worked out by hand from one change: the first instant that shows this wall time, else the offset before. */
export function byTheRule(wallAsUtcMs: number, changeMs: number, before: number, after: number): number {
  const withBefore = wallAsUtcMs - before * 60_000;
  const withAfter = wallAsUtcMs - after * 60_000;
  if (withBefore < changeMs) return withBefore;
  return withAfter >= changeMs ? withAfter : withBefore;
}
