/** Words for a day; the slot holds the value. */
export const DAY_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    mon: 'monday mondays mon',
    tue: 'tuesday tuesdays tue tues',
    wed: 'wednesday wednesdays wed weds wendsday wensday',
    thu: 'thursday thursdays thu thur thurs',
    fri: 'friday fridays fri',
    sat: 'saturday saturdays sat',
    sun: 'sunday sundays sun',
    today: 'today 2day tonight',
    tomorrow: 'tomorrow tmrw tmr tomorow tommorow 2moro 2morrow tmw tommorrow',
    yesterday: 'yesterday yday',
    weekend: 'weekend',
  }).flatMap(([day, words]) => words.split(' ').map((word): [string, string] => [word, day])),
);

export const MONTHS: ReadonlySet<string> = new Set(
  'january february march april june july august september october november december jan feb mar apr jun jul aug sep sept oct nov dec may'.split(
    ' ',
  ),
);

/** Minutes in one of a unit of time. */
export const DURATION_UNITS: ReadonlyMap<string, number> = new Map([
  ['min', 1],
  ['mins', 1],
  ['minute', 1],
  ['minutes', 1],
  ['minuts', 1],
  ['hour', 60],
  ['hours', 60],
  ['hr', 60],
  ['hrs', 60],
  ['h', 60],
  ['day', 1440],
  ['days', 1440],
  ['week', 10080],
  ['weeks', 10080],
  ['month', 43200],
  ['months', 43200],
  ['sec', 1 / 60],
  ['second', 1 / 60],
  ['seconds', 1 / 60],
]);
