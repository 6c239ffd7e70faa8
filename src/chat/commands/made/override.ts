import type { MadeBatch } from '../../../kitchen/stock/record-made.ts';
import { Problem } from '../../../nutrition/problem.ts';
import type { Asked } from '../../command.ts';

const MOST_REASON = 200;

/**
 * "override: dietitian approved by phone", which only staff can say.
 * @throws Problem `not_allowed` for anybody else, `needs_more` without a reason.
 */
export function overrideSaid({ slots, request }: Asked): { override?: string } {
  if (typeof slots.override !== 'string') return {};
  if (request.asker.role !== 'staff') {
    throw new Problem(
      'not_allowed',
      'Only staff can override a product that is not approved. Not logged.',
      'Ask staff to log this batch, or make it with an approved product.',
    );
  }
  const override = slots.override.trim().slice(0, MOST_REASON);
  if (override !== '') return { override };
  throw new Problem(
    'needs_more',
    'An override needs a reason that is kept. Not logged.',
    'Write it like "made 20 oat bars override: dietitian approved by phone".',
  );
}

/** What was let pass and why; or that there was nothing to let pass. */
export function overrideCautions({ slots }: Asked, made: readonly MadeBatch[]): string[] {
  const lines = made.flatMap(({ batch: { code, facts } }) =>
    facts.override
      ? [
          `${code} holds ${facts.override.products.join(', ')}, not approved by the dietitian. Override kept: ${facts.override.reason}. Athletes answer for whatever is in their body.`,
        ]
      : [],
  );
  if (lines.length > 0 || typeof slots.override !== 'string') return lines;
  return ['Every product in it is approved: no override was needed, and none was kept.'];
}
