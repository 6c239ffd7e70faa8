import type { Slots } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first, lastIn } from '../slots/find.ts';
import { avoid, batch, ingredient, nameOf, recipe } from '../slots/names.ts';
import { factor, numberOf, quantity } from '../slots/numbers.ts';
import { madeWhen } from '../slots/when.ts';
import { items } from './counts.ts';

const MOVED =
  /^(?:.* )?(?:move|moved|moving|transfer|transferred|put|thawed|froze|frozen|shifted|thaw|defrost|defrosted|freeze|brought|took|pulled|placed|take|stored|stuck) /;

export const made: IntentReader = {
  intent: 'made',
  cues: [
    'made',
    'baked',
    'finished',
    'done',
    'did',
    'log',
    'move',
    'moved',
    'opened',
    'open',
    'thawed',
    'thaw',
    'defrost',
    'defrosted',
    'frozen',
    'froze',
    'put',
    'actually',
    'correction',
    'prepped',
    'produced',
    'cooked',
    'transferred',
    'transfer',
    'take',
    'took',
    'pulled',
    'rolled',
    'cut',
    'logged',
    'record',
    'wrapped',
    'freeze',
    'make',
    'portioned',
    'placed',
    'stored',
    'meant',
    'not',
    'add',
  ],
  rules: [
    [/^ (?:just |we |i )*(?:bagged|wrapped|portioned|boxed) (?:up )?N (?:R|P) $/, 8],
    [/ (?:made|baked|prepped|produced|cooked|rolled|portioned|wrapped) (?:[a-z]+ ){0,4}(?:N|B) /, 7],
    [/^ (?:[a-z]+ ){0,4}(?:made|baked|prepped|produced|finished) (?:[a-z]+ ){0,4}(?:N|B|R) /, 7.5],
    [/ (?:finished|completed|done|did) (?:[a-z]+ ){0,3}(?:N|B) (?:[a-z]+ )?(?:A )?(?:R|P) /, 7],
    [/ (?:batch|R|P) (?:[a-z]+ )*(?:done|finished|made|ready|complete) (?:N|R|$)/, 6],
    [/ N (?:A )?(?:R|P) (?:are |is |all )*(?:made|done|finished|baked|ready|prepped|in L) /, 6.5],
    [/ (?:log|logged|record|logging|enter) (?:[a-z]+ ){0,3}(?:N|B) (?:A )?(?:R|P) /, 7],
    [/ (?:move|moved|transfer|transferred|shifted) (?:[a-z]+ ){0,3}(?:N|R|P|F|all|everything|D) /, 8],
    [
      / (?:put|placed|stored|stuck) (?:[a-z]+ ){0,2}(?:N |all )(?:A )?(?:R|P|more)? ?.*(?:in|into|to) (?:[a-z]+ )?L /,
      7.5,
    ],
    [/ (?:took|take|pulled|brought) (?:[a-z]+ ){0,3}(?:N|all|R|P) .*(?:out of|from|off) (?:[a-z]+ )?L /, 8],
    [/ (?:took|take|pulled) (?:out )?(?:N|all|R) .*to (?:[a-z]+ )?L /, 7.5],
    [/ (?:thawed|froze|frozen|freeze|thaw|defrost|defrosted) (?:[a-z]+ ){0,3}(?:N|R|P|all) /, 7.5],
    [/ (?:opened|open) (?:[a-z]+ ){0,3}(?:Q )?(?:of )?(?:U (?:of )?)?(?:F|Y|M) /, 8],
    [
      / (?:actually|correction|meant|sorry|oops|wrong|typo|fix) .*N (?:[a-zRP]+ )*(?:not|instead of|rather than) (?:[a-z]+ )?N /,
      9,
    ],
    [/^ (?!.*(?:cut|slice|divide) ).* N not N /, 7.5],
    [/^ add N R (?:to|in) (?:the )?L /, 7.5],
    [/ N (?:R|P) (?:are |is )(?:wrapped|portioned|packed) /, 7],
    [/^ (?:actually|correction|sorry|oops|i meant|no|nope|wait|hold on|my bad) (?:[a-z]+ ){0,4}N /, 7],
    [/ (?:correction|correct) /, 6],
    [/ (?:took|take|taken|pulled) out (?:N|all) .*(?:of|from) (?:[a-z]+ )?L /, 8.2],
    [/ new batch (?:of )?(?:[a-z]+ )?(?:N|R) /, 6],
  ],
  slots(lexed) {
    return {
      ...corrected(lexed),
      ...factor(lexed),
      ...recipe(lexed),
      ...(lexed.syms.has('A')
        ? {
            ...avoid(lexed),
            variant: all(lexed, 'A')
              .map((atom) => atom.word)
              .join(' '),
          }
        : {}),
      ...madeWhen(lexed),
      ...places(lexed),
      ...(/ (?:opened|open) /.test(lexed.shape) ? { opened: true } : {}),
      ...(lexed.syms.has('F') || lexed.syms.has('Y') ? ingredient(lexed) : {}),
      ...replaced(lexed),
      ...items(lexed),
      ...(first(lexed, 'D') ? { lot: first(lexed, 'D')?.text } : {}),
      ...batch(lexed),
      ...printedDate(lexed),
    };
  },
};

/** "with sunflower butter instead of peanut butter": what stood in for what. */
function replaced(lexed: Lexed): Slots {
  const atoms = find(lexed, / F (?:instead of|for|in place of|not|rather than) (?:[a-z]+ )?F /)?.filter(
    (atom) => atom.sym === 'F',
  );
  const was = atoms?.at(-1);
  return was ? { replaced: nameOf(was) } : {};
}

/** The maker's date on a package: "use by 11/5". */
function printedDate(lexed: Lexed): Slots {
  const atom = lastIn(
    lexed,
    / (?:use by|best by|sell by|expires|expire|exp|good through) (?:[a-z]+ )?W /,
    'W',
  );
  return atom?.moment?.day === undefined ? {} : { use_by: atom.moment.day };
}

function corrected(lexed: Lexed): Slots {
  const pair = find(lexed, / N (?:[a-zRP]+ )*(?:not|instead of|rather than) (?:[a-z]+ )?N /)?.filter(
    (atom) => atom.sym === 'N',
  );
  const [now, was] = pair ?? [];
  const isCorrection =
    pair !== undefined ||
    / (?:actually|correction|correct|meant) |^ (?:nope|no|sorry|oops|wait|hold on) (?:it |that |there )*(?:was|were|is|are|should be) (?:only )?N /.test(
      lexed.shape,
    );
  const count =
    / all (?:[a-z]+ )?(?:R|P) /.test(lexed.shape) && !lexed.syms.has('N')
      ? { quantity: 'all' }
      : quantity(lexed);
  return {
    ...count,
    ...(isCorrection ? { correction: true } : {}),
    ...(now && was ? { quantity: numberOf(now), quantity_was: numberOf(was) } : {}),
  };
}

/** "in the garage": a place no kitchen word stands for is still the place that was said. */
function strangePlace(lexed: Lexed): Slots {
  const match = /\b(?:in|into|to) (?:the )?([a-z][a-z0-9 ]{1,30})$/i.exec(lexed.text.trim());
  const last = lexed.seen.at(-1);
  return match?.[1] && last?.unknown ? { location: match[1].toLowerCase() } : {};
}

/** Where it stands, and where it came from when it was moved. */
function places(lexed: Lexed): Slots {
  const from = lastIn(lexed, / (?:from|out of|off|of) (?:[a-z]+ )?L /, 'L');
  const to = all(lexed, 'L').find((atom) => atom !== from);
  const moved = MOVED.test(lexed.shape) && !/ (?:made|baked|prepped) .*(?:put|stored)? ?/.test(lexed.shape);
  return {
    ...(moved || from ? { move: true } : {}),
    ...(from ? { location_from: nameOf(from) } : {}),
    ...(to
      ? { location: nameOf(to) }
      : / (?:froze|freeze|frozen) /.test(lexed.shape) && !from
        ? { location: 'freezer' }
        : strangePlace(lexed)),
  };
}
