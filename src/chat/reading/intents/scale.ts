import type { Slots, SlotValue } from '../../slots.ts';
import type { IntentReader } from '../intent-reader.ts';
import type { Lexed } from '../lexed.ts';
import { all, find, first, lastIn } from '../slots/find.ts';
import { avoid, dish, ingredient, nameOf } from '../slots/names.ts';
import {
  amount,
  bareUnit,
  factor,
  numberOf,
  outputUnit,
  pieceMass,
  pieces,
  portionEach,
  quantity,
  unitAfter,
} from '../slots/numbers.ts';
import { targets } from '../slots/targets.ts';
import { when } from '../slots/when.ts';

const PROBLEMS: readonly (readonly [RegExp, string])[] = [
  [/ (?:dry|dryer|drier|stiff) /, 'too dry'],
  [/ (?:wet|runny|loose|watery|soupy|liquidy|moist|soft) /, 'too wet'],
  [/ (?:sticky|tacky|gooey) /, 'too sticky'],
  [/ (?:crumbly|crumbling|crumble|crumbles|falling|fall|apart|together) /, 'crumbly'],
  [/ (?:burnt|burned|burn|overbaked|overcooked) /, 'burnt'],
  [/ (?:sweet) /, 'too sweet'],
  [/ (?:salty) /, 'too salty'],
  [/ (?:set|setting|firm) /, 'not setting'],
  [/ (?:hard|hardened) /, 'too hard'],
];
const OVER =
  / (?:too much|overdid|overdone|went overboard|twice the|B (?:[a-z]+ )*(?:F|M)|extra|overadded|tablespoons? instead|U instead of U|instead of Q) /;
const MISTAKE = / (?:mistake|accident|accidentally|oops|accidently|wrong) /;
const FORGOT = / (?:forgot|forget|missed|skipped|left out) (?:[a-z]+ ){0,3}(?:F|M|Y) /;
/** A message without one of these tells of no trouble. */
const TROUBLE: ReadonlySet<string> = new Set(
  'overdid overdone overboard dry dryer drier stiff wet runny loose watery soupy liquidy moist soft sticky tacky gooey crumbly crumbling crumble crumbles falling fall apart burnt burned burn overbaked overcooked sweet salty set setting firm hard hardened much twice B extra overadded accident accidentally accidently mistake oops wrong forgot forget missed skipped left instead too stick together'.split(
    ' ',
  ),
);
const RESCUE =
  / (?:too|way too|super|really|so|very|is|are|r|a bit|kinda|turned out|came out|wont|not|pretty) (?:[a-z]+ )?(?:dry|dryer|stiff|wet|runny|sticky|crumbly|loose|watery|soupy|tacky|gooey|salty|sweet|hard|soft|hardened|crumbling|burnt) /;

export const scale: IntentReader = {
  intent: 'scale',
  cues: [
    'N',
    'B',
    'Q',
    'X',
    'R',
    'P',
    'dry',
    'wet',
    'sticky',
    'crumbly',
    'crumbling',
    'forgot',
    'mistake',
    'runny',
    'scale',
    'much',
    'salty',
    'apart',
    'burnt',
    'batch',
    'stick',
    'overdid',
  ],
  rules: [
    [/ (?:overdid|overdone|went overboard (?:on|with)) (?:the )?(?:F|M) /, 8.8],
    [/ (?:added|put|used|dumped) (?:[a-z]+ ){0,3}Q (?:of )?F (?:[a-zPR]+ )*instead of (?:N|Q|U) /, 9.6],
    [/ Q (?:of )?F .*how many (?:P|R|batches) /, 9.6],
    [/ how many (?:P|R|batches) (?:[a-zP]+ )*from (?:[a-z]+ )*Q /, 9],
    [/ (?:most|many) (?:P|R) (?:[a-z]+ )*(?:make|get|do) .*Q (?:of )?F /, 9],
    [/ (?:need|want) enough (?:[a-z]+ )?(?:R|P) .*N /, 8.7],
    [/^ (?:R|P) for (?:about |around )?N /, 8.4],
    [/ (?:wants?|needs?) (?:[a-z]+ )?(?:R|P) for N /, 7.2],
    [/ N (?:of )?(?:the )?(?:pans?|trays?) of (?:the )?(?:R|P) | N (?:R|P) in N (?:pans?|trays?) /, 7],
    [/ R N P /, 4.6],
    [/^ R (?:recipe )?(?:but )?for N /, 8.6],
    [/ how far (?:does|do|will|would) (?:[a-z]+ )?Q (?:of )?F .*(?:R|P) /, 9],
    [/ Q (?:of )?F (?:left )?(?:max|most|at most) (?:R|P) /, 9],
    [
      / (?:cut|slice|slices|divide) (?:[a-z]+ ){1,3}(?:into|in|to) N (?:P )?(?:not|instead of|rather than) N /,
      6.5,
    ],
    [/ (?:amounts?|quantities) .*N (?:R|P) /, 8.2],
    [/ (?:R|P) for (?:each|every one|all) of (?:the |them )?N /, 8.6],
    [/^ U (?:the |it |them |this )?(?:[a-z]+ )?(?:into|in) N (?:rather than|instead of|not) N /, 6],
    [/^ R but X not X $/, 7],
    [/ (?:cut|slice) (?:em|it|them|that) (?:in|into) N $/, 5],
    [/^ how much F (?:per|for each|in each|in a) P (?:in|of) (?:the )?R $/, 8],
    [/^ (?:a |one )?B (?:the |our |this )?R recipe $/, 7.8],
    [/ (?:amounts?|ingredients?|measurements?|quantities) (?:[a-z]+ )*for (?:[a-z]+ )?N /, 7.8],
    [/ N (?:[a-z]+ )?(?:R|P) .*recipe /, 7.7],
    [/ (?:gimme|need|make|want|amounts|give|do|like) .*N (?:more |of them |of those |of these )$/, 4.5],
    [/ R .*N of (?:them|those|these|em) /, 5],
    [/^ R (?:for )?(?:N|B) (?:P )?$/, 5],
    [/ F .*Q (?:left |only )?(?:[a-z]+ )*how many (?:P|R) /, 8.7],
    [/ Q (?:left |only )(?:[a-z]+ )*how many (?:P|R) /, 8.6],
    [/^ (?:[a-z]+ )?(?:need|want|make|get|give) (?:us |me )?(?:a |some |the )(?:R|P) $/, 2],
    [/ more (?:R|P) .*N /, 5],
    [/ N (?:R|P) (?:[a-z]+ )?down to N /, 7.4],
    [/ (?:P|R) for (?:[a-z]+ )?N /, 5],
    [/ R in U /, 4.4],

    [/ N /, 1],
    [/^ N $/, 3],
    [/ N (?:[a-z]+ ){0,2}(?:A )*(?:[a-z]+ )?(?:P|R) /, 4],
    [
      / (?:make|need|want|give|prep|gimme|bake|for|feed|get|do|cook|prepare|produce|order of|want|amounts?) (?:[a-z]+ ){0,3}N (?:[a-z]+ )?(?:A )?(?:P|R) /,
      5,
    ],
    [/ R for N /, 5.5],
    [/ R (?:[a-z]+ )?B /, 6],
    [/ B (?:[a-z]+ ){0,3}(?:A )?(?:R|P) /, 6],
    [/ B /, 4],
    [/ B (?:it|that|this|everything|all) /, 5],
    [/ (?:scale|scaled|scaling|multiply) /, 7],
    [/ (?:how much|how many) (?:of )?(?:F|M) (?!(?:is |are |does |do )?(?:in|has|have) ).*N (?:P|R) /, 7.5],
    [/ (?:need|want) enough (?:[a-z]+ )?(?:R|P) for N /, 8.6],
    [/^ cut R (?:in |into )N (?:not|instead of) N /, 8],
    [/ N X of R /, 7],
    [/^ (?:[a-z]+ )?Q of (?:A )?R $/, 6],
    [
      /^ (?:a |one |for a )?X (?:pan )?(?:of )?(?:A )?(?:R|P) (?:pls |please )?$|^ (?:R|P) (?:a |one )?X (?:pan )?(?:pls |please )?$/,
      6.5,
    ],
    [/ (?:what|how (?:many|much)) .*(?:make|get|do|made) .*Q (?:of )?(?:F|M) /, 8.5],
    [/ (?:only|just|got|have) (?:[a-z]+ ){0,2}Q (?:of )?(?:F|M) .*(?:how many|what can|make) /, 9],
    [/ how many (?:P|R) .*Q (?:of )?(?:F|M) /, 8.5],
    [/ Q (?:of )?(?:F|M) (?:[a-z]+ )*how many (?:P|R) /, 8.5],
    [/ X (?:[a-z]+ )*(?:to|into|instead) (?:[a-z]+ )*X /, 9],
    [/ (?:fit|fits|fill|in|for|into|use|to) (?:[a-zRP]+ )*(?:N )?X /, 7],
    [/ (?:P|R|N) (?:of|at) Q /, 6.5],
    [/ (?:Q each|Q apiece) /, 6],
    [/ (?:each|every) P .*Q /, 6],
    [/ (?:recipe|batch|it|R|this|card) (?:makes|make|yields|yield|is for|serves) .*N .*N /, 8],
    [/ N P N P (?:each|per|apiece) /, 7.5],
    [/ (?:N )?P (?:with )?N (?:P )?(?:each|apiece|per P) /, 7],
    [/ G (?:extra|more|spare|over) /, 6],
    [RESCUE, 8],
    [/ (?:P|R|mix|dough|slab|it|batter) .*(?:crumbly|sticky|dry|wet|runny) /, 7],
    [
      / (?:wont|doesnt|not|isnt|didnt|dont) (?:[a-z]+ )?(?:set|hold together|stick|stick together|firm|setting) /,
      7.5,
    ],
    [/ (?:fall|falling|falls|fell) apart /, 8],
    [/ B (?:[a-z]+ )*(?:F|M) (?:[a-z]+ )*(?:mistake|accident|accidentally) /, 9],
    [/ (?:mistake|accident|accidentally|oops|wrong) .*(?:F|M|Q|U) /, 8],
    [/ too much (?:of )?(?:the )?(?:F|M) /, 8],
    [/ (?:put|added|used|dumped) (?:[a-z]+ ){0,2}(?:extra|too much|twice) /, 8],
    [FORGOT, 7.5],
    [/ U instead of U /, 8.5],
    [/ Q (?:of )?(?:F|M) instead of Q /, 9.2],
    [/ (?:R|P) N /, 4],
    [/^ R .*N $/, 3],
    [/ (?:cut|slice) (?:[a-zRP]+ )*(?:bigger|smaller|thicker|thinner) /, 6.5],
    [/ N (?:P|pieces) from /, 6],
    [/ (?:make|making|prep|bake) enough (?:[a-z]+ )?(?:R|P|F) for N /, 8.6],
    [/ enough (?:[a-z]+ )?(?:R|P) for N /, 6],
    [/ (?:cut|slice|divide|portion) (?:[a-z]+ )*R (?:[a-z]+ )*(?:into|in) N /, 6],
    [/ N P (?:please|pls) /, 5],
    [/ (?:bigger|smaller|larger|mini|lighter|heavier) (?:P|R) /, 4],
    [/^ (?:and )?(?:for|what about) N (?:P )?$/, 5],
    [/ (?:make|making|prep) (?:[a-z]+ ){0,2}(?:A )?(?:R|P) /, 2.5],
    [/ recipe .*for N /, 6],
    [/ N (?:P )?(?:of )?(?:[a-z]+ )?(?:R|P) (?:please|pls|now|asap) /, 5],
  ],
  slots(lexed) {
    const cut = pieces(lexed);
    const trouble = problem(lexed);
    const pans = pan(lexed);
    const counted = quantity(lexed);
    return {
      ...(cut.pieces !== undefined && all(lexed, 'N').length <= Object.keys(cut).length
        ? {}
        : pans.pan_count !== undefined && counted.unit === undefined
          ? {}
          : counted),
      ...cut,
      ...(all(lexed, 'N').length === 0 && first(lexed, 'Q') ? bareUnit(lexed) : {}),
      ...(trouble.problem ? bareUnit(lexed) : {}),
      ...batches(lexed),
      ...dish(lexed),
      ...(lexed.syms.has('F') || lexed.syms.has('M') ? ingredient(lexed) : {}),
      ...amounts(lexed),
      ...avoid(lexed),
      ...pans,
      ...baseYield(lexed),
      ...perPerson(lexed),
      ...per(lexed),
      ...parts(lexed),
      ...extra(lexed),
      ...pieceBefore(lexed),
      ...reduced(lexed),
      ...perPieceTarget(lexed),
      ...trouble,
      ...outputUnit(lexed),
      ...when(lexed),
    };
  },
};

/** "cut 40 bars down to 30": the second is wanted. */
function reduced(lexed: Lexed): Slots {
  const [was, now] = find(lexed, / N (?:R|P) (?:[a-z]+ )?down to N /)?.filter(({ sym }) => sym === 'N') ?? [];
  return was && now ? { quantity: numberOf(now), quantity_was: numberOf(was) } : {};
}

/** From here on "oat bars x 36" counts bars; nobody asks for so many batches. */
const MANY = 12;

function batches(lexed: Lexed): Slots {
  const atom = first(lexed, 'B');
  const isCount =
    /^(?:x|times)\b| x$/.test(atom?.text ?? '') &&
    Number.isInteger(atom?.value) &&
    (atom?.value ?? 0) >= MANY &&
    !lexed.syms.has('N') &&
    (lexed.syms.has('R') || all(lexed, 'P').some(({ id }) => id !== undefined));
  if (!atom || !isCount) return factor(lexed);
  const unit = (first(lexed, 'R') ?? first(lexed, 'P'))?.unit;
  return { quantity: numberOf(atom), ...(unit === undefined ? {} : { unit }) };
}

/** "more bars, like 120": the piece may stand before the one number. */
function pieceBefore(lexed: Lexed): Slots {
  const piece = first(lexed, 'P');
  const isOne = all(lexed, 'N').length === 1 && quantity(lexed).unit === undefined;
  return isOne &&
    piece &&
    piece.unit !== 'person' &&
    / P (?:[a-z]+ ){0,3}N /.test(lexed.shape) &&
    !/ (?:into|for) N /.test(lexed.shape)
    ? { unit: piece.unit }
    : {};
}

function amounts(lexed: Lexed): Slots {
  const portion = portionEach(lexed);
  if (portion !== undefined)
    return { ...pieceMass(lexed), portion: numberOf(portion), portion_unit: portion.unit };
  const said = amount(lexed);
  if (said.amount === undefined) return {};
  const limiting =
    / (?:use up|using up|finish|how many|how much|what|only|left|have|max|got) /.test(lexed.shape) &&
    (lexed.syms.has('F') || lexed.syms.has('M'));
  return limiting ? { ...said, limit_by: 'ingredient' } : said;
}

/** "how much honey per bar": an amount for each piece is asked for. */
function per(lexed: Lexed): Slots {
  const unit = lastIn(lexed, / (?:per|each|every) R /, 'R') ?? lastIn(lexed, / (?:per|each|every) P /, 'P');
  return unit?.unit === undefined ? {} : { per: unit.unit };
}

function pan(lexed: Lexed): Slots {
  if (!lexed.syms.has('X')) return panCount(lexed);
  const pans = all(lexed, 'X');
  const [one, two] = pans;
  if (!one) return {};
  if (two) {
    const backward = / X (?:instead of|not) (?:[a-z]+ )*X /.test(lexed.shape);
    const [from, to] = backward ? [two, one] : [one, two];
    return { pan_from: nameOf(from), pan: nameOf(to), ...panCount(lexed) };
  }
  return { pan: nameOf(one), ...panCount(lexed) };
}

function panCount(lexed: Lexed): Slots {
  const count = find(lexed, / N (?:X|pans?|trays?) /)?.[0];
  return count ? { pan_count: numberOf(count) } : {};
}

const MAKES =
  / (?:makes|make|yields|yield|serves|is for|gives) (?:[a-z]+ )?N .*?(?:need|want|for|make|to) (?:[a-z]+ )*N /;

/** "normally we make them for 16, but tomorrow I need enough for 55". */
const USUALLY =
  / (?:normally|usually|typically|always) .*?N .*?(?:but|now|this time|today|tomorrow|W) .*?(?:need|want|for|make|have|is|are) (?:[a-z]+ )*N /;

function baseYield(lexed: Lexed): Slots {
  if (!lexed.countsTwice) return {};
  const covered = (find(lexed, MAKES) ?? find(lexed, USUALLY))?.filter((atom) => atom.sym === 'N');
  const [base, wanted] = covered ?? [];
  if (!base || !wanted) return {};
  return { base_yield: numberOf(base), quantity: numberOf(wanted) };
}

function perPerson(lexed: Lexed): Slots {
  if (!lexed.countsTwice) return {};
  const covered =
    find(lexed, / N P (?:[a-z]+ )*N (?:P )?(?:[a-z]+ )?(?:each|apiece|per) /) ??
    find(lexed, / for N N (?:P )?(?:each|apiece) /) ??
    find(lexed, / N (?:P|R) (?:each|apiece|per) (?:P )?(?:[a-z]+ )?(?:for )?N /);
  const [one, two] = covered?.filter((atom) => atom.sym === 'N') ?? [];
  if (!one || !two || !covered) return {};
  const isTold = covered[0]?.sym === 'for';
  const people = isTold || unitAfter(covered, covered.indexOf(one)).unit === 'person' ? one : two;
  const each = people === one ? two : one;
  const unit = unitAfter(covered, covered.indexOf(each)).unit;
  return {
    quantity: numberOf(people),
    unit: 'person',
    portion: numberOf(each),
    ...(unit === undefined || unit === 'person' ? {} : { portion_unit: unit }),
  };
}

/** "24 oat bars and 16 cherry bars". */
function parts(lexed: Lexed): Slots {
  if (!lexed.countsTwice) return {};
  const found: SlotValue[] = [];
  lexed.seen.forEach((atom, i) => {
    const next =
      lexed.seen[i + 1]?.sym === 'of' || lexed.seen[i + 1]?.sym === 'A'
        ? lexed.seen[i + 2]
        : lexed.seen[i + 1];
    if (atom.sym !== 'N' || next?.sym !== 'R') return;
    found.push({
      quantity: numberOf(atom),
      ...(next.unit === undefined ? {} : { unit: next.unit }),
      recipe: nameOf(next),
    });
  });
  return found.length > 1 ? { parts: found } : {};
}

/** "40 bars of 200 kcal": a figure each piece should have. */
function perPieceTarget(lexed: Lexed): Slots {
  if (!/ (?:P|R) (?:of|with|at) N M /.test(lexed.shape)) return {};
  const goal = targets(lexed);
  return goal.length > 0 ? { target: goal as unknown as SlotValue } : {};
}

function extra(lexed: Lexed): Slots {
  if (!lexed.syms.has('G')) return {};
  const share = lastIn(lexed, / (?:G|plus|extra|spare|and) (?:[a-z]+ )?(?:G )?/, 'G') ?? first(lexed, 'G');
  return share ? { extra_pct: numberOf(share) } : {};
}

function problem(lexed: Lexed): Slots {
  const { shape } = lexed;
  if (!lexed.seen.some((atom) => TROUBLE.has(atom.sym))) return {};
  if (FORGOT.test(shape)) return { problem: 'forgot' };
  if (MISTAKE.test(shape) && (OVER.test(shape) || lexed.syms.has('B'))) return { problem: 'overadded' };
  if (
    / (?:too much|twice the|added extra|overdid|overdone|went overboard|U instead of U|instead of Q) | Q (?:of )?F (?:[a-zPR]+ )*instead of N /.test(
      shape,
    )
  )
    return { problem: 'overadded' };
  if (
    !RESCUE.test(shape) &&
    !/ (?:fall|apart|wont|doesnt|isnt|not|dry|sticky|crumbly|crumbling) /.test(shape)
  )
    return {};
  const row = PROBLEMS.find(([pattern]) => pattern.test(shape));
  return row ? { problem: row[1] } : {};
}
