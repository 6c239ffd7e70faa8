import type { Clock, Kitchen } from './kitchen/kitchen.ts';
import type { Book, KitchenSettings } from './nutrition/book.ts';

const settings: KitchenSettings = {
  name: 'Alder Point Herons',
  timeZone: 'America/Chicago',
  allergenList: 'us',
  caloriesForAthletes: false,
  emergencyNumber: '911',
  contacts: {
    dietitian: 'the sports dietitian',
    physician: 'the team physician',
    athleticTrainer: 'the athletic trainer',
  },
  pans: [],
  locations: [],
  mostDays: 7,
  prepTime: '10:00',
  stockCheckTime: '08:00',
  readingTimes: ['08:00', '16:00'],
  closedWeekdays: [],
  spareShare: 0.1,
  piecesPerPerson: 1,
  par: new Map(),
};

/** The kitchen to answer from. */
export function openKitchen(clock: Clock): Kitchen {
  const book: Book = { settings, foods: new Map(), recipes: new Map(), problems: [] };
  return { book, clock };
}
