/** What a request can be about; the names are the contract of `--json`. */
export const INTENTS = [
  'scale',
  'measure',
  'macros',
  'swap',
  'allergens',
  'balance',
  'plan',
  'shop',
  'cost',
  'stock',
  'made',
  'served',
  'tossed',
  'counted',
  'temperature',
  'schedule',
  'game',
  'remind',
  'fuel',
  'supplement',
  'trace',
  'recipes',
  'settings',
  'help',
  'medical',
  'emergency',
  'unknown',
] as const;
export type Intent = (typeof INTENTS)[number];

export interface Target {
  readonly nutrient: string;
  readonly amount: number;
  readonly unit: string;
  /** `least` for "at least 20 g", `most` for "under 250". */
  readonly bound?: 'least' | 'most';
}

/** The slots of a reading. One that was not said is absent. Values are plain JSON. */
export type SlotValue =
  | string
  | number
  | boolean
  | readonly SlotValue[]
  | { readonly [name: string]: SlotValue };
export type Slots = { readonly [name: string]: SlotValue | undefined };

/** A request as read: what about, and with which values. */
export interface Reading {
  readonly intent: Intent;
  readonly slots: Slots;
}
