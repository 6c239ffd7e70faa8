/** Words of preparation and condition that a recipe hangs on a food; a comma before one separates nothing. */
export const PREP_WORDS: ReadonlySet<string> = new Set(
  (
    'beaten blanched boiled chilled chopped coarsely cooked cooled cored crumbled crushed cubed cut defrosted ' +
    'diced divided drained finely firmly fresh freshly frozen grated ground halved heaping hulled juiced julienned ' +
    'large lightly loosely low mashed medium melted microwaved minced optional packed peeled pitted plus preferably ' +
    'pressed quartered raw rinsed ripe roasted roughly scant seeded separated shelled shredded sifted skinless ' +
    'sliced slivered small smashed softened soaked stemmed thawed thick thin thinly toasted torn trimmed uncooked ' +
    'unsalted salted warm warmed washed well zested at for or to about room boneless very fully halves rough roughly ' +
    'more if as dry unsweetened sweetened plain'
  ).split(' '),
);

/** Words that say which make or grade was used. A food that is told apart by one is found before it is dropped. */
export const GRADE_WORDS: ReadonlySet<string> = new Set(
  (
    'all creamy crunchy dark extra free golden granulated kosher natural old-fashioned organic purpose pure quick ' +
    'real regular smooth virgin your favorite whole 100% enriched fortified local pasteurized table stone stone-ground ' +
    'iodized cut-up liquid low-sodium reduced-sodium low-cholesterol cholesterol-free no-salt-added generic ' +
    'store-bought homestyle homemade prepared seedless mini baby'
  ).split(' '),
);

/** Classes that a table writes before the food itself: "Cereal, oats, rolled". */
export const GENERIC_WORDS: ReadonlySet<string> = new Set(
  'cereal cereals spice spices herb herbs seasoning nut nuts seed seeds fruit fruits vegetable vegetables legumes oil'.split(
    ' ',
  ),
);

/** Words before a unit that say how full the measure was. */
export const FILL_WORDS: ReadonlySet<string> = new Set([
  'heaping',
  'heaped',
  'level',
  'levelled',
  'leveled',
  'scant',
  'rounded',
  'generous',
  'packed',
  'full',
  'big',
  'good',
]);

/** Containers whose size is written on them: "(15 oz) can" is 15 oz each. */
export const CONTAINERS: ReadonlySet<string> = new Set([
  'can',
  'jar',
  'bag',
  'box',
  'package',
  'packet',
  'container',
  'carton',
  'bottle',
  'block',
  'stick',
  'bar',
  'scoop',
  'case',
]);

export const LEFT_TO_THE_COOK =
  /\b(?:to taste|as needed|as desired|if desired|for (?:garnish|serving|dusting|rolling|greasing|topping|drizzling|the pan|sprinkling))\b/i;

/** "optional", "divided" and their like belong to the method, not to the food's name. */
export const BULLET = /^(?:[*•·▪◦‣]|[-–—](?=\s)|\d{1,2}[.)](?=\s+\d))\s*/;
