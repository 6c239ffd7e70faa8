import type { Intent } from '../slots.ts';
import { byShape } from './by-shape.ts';
import { isDelivery } from './intents/delivery.ts';

/** Sentences that tell what happened, in whatever order: a wrong entry in the ledger is worse than a question. */
const HAPPENED: readonly (readonly [intent: Intent, pattern: RegExp])[] = [
  ['counted', / (?:counted|recount|recounted|inventory) .*N /],
  ['counted', / N (?:[a-zPR]+ )*on (?:the )?(?:shelf|L) (?:[a-z]+ )*(?:system|checked|sheet|ledger|list) /],
  ['counted', / (?:were|we are|im|its) down to (?:[a-z]+ )?N /],
  ['counted', / N (?:[a-zPRF]+ )*left (?:[a-zL]+ )*(?:i )?(?:checked|counted|looked) /],
  [
    'tossed',
    / (?:got rid of|threw|thrown|throw away|threw away|trashed|binned|dumped|chucked) .*(?:N|R|P|all) /,
  ],
  ['tossed', / N (?:R|P) .*(?:mold|moldy|garbage|in the trash|went bad|spoiled|fell on the floor) /],
  ['made', / new batch (?:of )?(?:N|R) /],
  ['made', / (?:cranked out|knocked out|finished up|came out to|turned out|whipped up) .*N /],
  ['made', / (?:B|doubled|tripled) (?:[a-z]+ )*R (?:and|we) got N /],
  ['made', /^ (?:i|we) make N .*(?:already|done|today already) /],
  ['made', / R out of (?:[a-z]+ )?L (?:[a-z]+ )*(?:into|to|in) (?:[a-z]+ )?L /],
  ['made', /^ put (?:[a-z]+ )?N (?:[a-z]+ )?(?:R|P) (?:[a-z]+ )*(?:on|in|into) (?:[a-z]+ )?L /],
  ['served', /^ (?:we |i |just )*(?:gave|handed|passed) out (?:[a-z]+ )?N /],
  ['served', /^ (?:we |i |just )*(?:put|loaded) N (?:[a-z]+ )?(?:R|P) on (?:the )?bus /],
];

const ASKED = / (?:remind|reminder|alert|should|can|could|may|do i|how|what|why|when|which|if) |\? /;

/** The ledger entry a sentence plainly tells; a question or a reminder tells none. */
export const toldEntry = byShape((lexed): Intent | undefined => {
  if (isDelivery(lexed)) return 'stock';
  if (ASKED.test(lexed.shape)) return undefined;
  return HAPPENED.find(([, pattern]) => pattern.test(lexed.shape))?.[0];
});
