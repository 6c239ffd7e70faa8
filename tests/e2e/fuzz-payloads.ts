import fc from 'fast-check';
import { FORM_IDS, type FormId } from '../../src/chat/forms/form.ts';
import {
  command,
  directMessage,
  eventBody,
  homeOpened,
  homePress,
  mention,
  press,
  STAFF,
  shortcut,
  viewSubmission,
} from '../slack/payloads.ts';

const PAGING = ['<!channel>', '<!here>', '<!everyone>', '<@U0STAFF>', '<!subteam^S0KITCHEN>', '<http://x|y>'];
const SEED = 20_261_125;

export const drawn = <T>(arbitrary: fc.Arbitrary<T>, count: number): T[] =>
  fc.sample(arbitrary, { seed: SEED, numRuns: count });

const REQUESTS = [
  '40 oat bars',
  'macros oat bars',
  'made 3 oat bars',
  'served 1 ',
  'nut free ',
  'swap milk ',
  'help ',
  'stock ',
  'fridge a 3',
  'remind us thursday 3pm to ',
  'my needs: ',
  'done R1 ',
  'label B1 ',
];
const words = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc
    .tuple(
      fc.constantFrom(...REQUESTS),
      fc.constantFrom(...PAGING, '&lt;!channel&gt;', '\u202e', '💥'.repeat(40), ''),
    )
    .map((parts) => parts.join(' ')),
);
const junk = fc.oneof(
  fc.constant(undefined),
  fc.constant(null),
  fc.integer(),
  fc.string({ maxLength: 20 }),
  fc.array(fc.string({ maxLength: 5 }), { maxLength: 3 }),
  fc.object({ maxDepth: 2, maxKeys: 3 }),
);

/** A payload of Slack's shape with some fields replaced by anything. */
const damaged = (whole: fc.Arbitrary<object>): fc.Arbitrary<object> =>
  fc.tuple(whole, fc.array(fc.tuple(fc.nat(30), junk), { maxLength: 3 })).map(([payload, damages]) => {
    const copy: Record<string, unknown> = structuredClone(payload) as Record<string, unknown>;
    for (const [at, value] of damages) {
      const names = Object.keys(copy);
      const name = names[at % names.length];
      if (name) copy[name] = value;
    }
    return copy;
  });

export const commands = damaged(words.map((text) => command(text, { user_id: STAFF })));

export const events = damaged(
  fc
    .tuple(
      damaged(words.map((text) => mention(text))),
      damaged(words.map((text) => directMessage(text, { user: STAFF }))),
      damaged(fc.constant(homeOpened(STAFF))),
      fc.nat(2),
    )
    .map(([one, other, home, which]) => eventBody([one, other, home][which] ?? one)),
);

const ACTIONS = ['next_step_1', 'mark_1', 'mark_3', 'home_without', ...FORM_IDS.map((id) => `form_${id}`)];
const action = fc
  .tuple(fc.constantFrom(...ACTIONS), words, junk)
  .map(([action_id, value, options]) => ({ action_id, value, selected_options: options }));
export const presses = damaged(
  fc.oneof(
    words.map((text) => press(text)),
    action.map((one) => ({ ...press('x'), actions: [{ ...press('x').actions[0], ...one }] })),
    damaged(action).map((one) => homePress(one)),
  ),
);

export const shortcuts = damaged(
  fc.constantFrom(...FORM_IDS.map((id) => `form_${id}`), 'form_none', '').map((id) => shortcut(id)),
);

/** Forms as they were opened, filled in with anything. */
export function submissions(views: ReadonlyMap<FormId, { blocks: readonly object[] }>): fc.Arbitrary<object> {
  const cell = fc.oneof(
    words,
    fc.double().map(String),
    fc.constantFrom('2026-12-05', '14:00', 'oat-bars', '0'),
  );
  const one = fc.constantFrom(...FORM_IDS).chain((id) => {
    const view = views.get(id) ?? { blocks: [] };
    const fields = view.blocks.flatMap((block) =>
      'element' in block && 'block_id' in block ? [String(block.block_id)] : [],
    );
    return fc
      .tuple(
        fc.record(
          Object.fromEntries(
            fields.map((field) => [field, fc.oneof(cell, fc.array(cell, { maxLength: 3 }))]),
          ),
          {
            requiredKeys: [],
          },
        ),
        damaged(fc.constant({})),
        fc.uuid(),
      )
      .map(([filled, more, viewId]) =>
        viewSubmission({ ...view, ...more, id: viewId } as never, filled as Record<string, string>, {}),
      );
  });
  return fc.oneof(one, damaged(one), damaged(damaged(one)));
}

/** What a browser, or somebody who is none, asks of the pages of an install. */
export const visits = fc.record({
  path: fc.constantFrom('/slack/install', '/slack/oauth_redirect'),
  query: fc.dictionary(
    fc.constantFrom('code', 'state', 'error', 'scope', 'team', 'x'),
    fc.oneof(
      fc.string({ unit: 'binary', maxLength: 40 }),
      fc.constantFrom('<script>', '../..', 'access_denied'),
    ),
    { maxKeys: 4 },
  ),
  raw: fc.option(fc.stringMatching(/^[a-z0-9%&=?./;:+-]{0,40}$/), { nil: undefined }),
  method: fc.constantFrom('GET', 'GET', 'GET', 'POST', 'HEAD', 'PUT', 'DELETE', 'OPTIONS'),
  cookie: fc.option(fc.stringMatching(/^[a-z0-9=;.%_ -]{0,60}$/), { nil: undefined }),
});
export type Visit = typeof visits extends fc.Arbitrary<infer T> ? T : never;

export const garbage = fc.string({ unit: 'binary', maxLength: 200 });
export const fields = (payload: object): Record<string, string> =>
  Object.fromEntries(
    Object.entries(payload).map(([name, value]) => [
      name,
      typeof value === 'string' ? value : (JSON.stringify(value) ?? ''),
    ]),
  );
