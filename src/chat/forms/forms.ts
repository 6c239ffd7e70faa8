import { batch } from './batch.ts';
import { count } from './count.ts';
import type { Form, FormId } from './form.ts';
import { game } from './game.ts';
import { needs } from './needs.ts';
import { reading } from './reading.ts';
import { settings } from './settings.ts';

/** Every form there is. */
export const FORMS: ReadonlyMap<FormId, Form> = new Map(
  [batch, count, reading, game, needs, settings].map((form) => [form.id, form]),
);
