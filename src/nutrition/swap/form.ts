import type { Food } from '../food.ts';

/**
 * The shape a food has at the bench, told from its words and its composition. Roles say what work a food can do;
 * the form says whether a cook would reach for it: peanut butter and mayonnaise both bind, only one is a paste.
 */
export const FORMS = [
  'nut_paste',
  'milk',
  'creamy_liquid',
  'juice',
  'water',
  'syrup',
  'sugar',
  'protein_powder',
  'dry_powder',
  'yogurt',
  'soft_cheese',
  'cheese',
  'granola',
  'rolled_grain',
  'puffed_grain',
  'flour',
  'cooked_grain',
  'nut',
  'seed',
  'small_seed',
  'coconut_flakes',
  'dried_fruit',
  'fresh_fruit',
  'fruit_puree',
  'vegetable',
  'starchy_vegetable',
  'chips',
  'cocoa',
  'oil',
  'solid_fat',
  'egg',
  'bread',
  'snack',
  'bean_spread',
  'plant_protein',
  'meat',
  'fish',
  'leavening',
  'salt',
  'spice',
  'herb',
  'extract',
  'sauce',
  'other',
] as const;
export type Form = (typeof FORMS)[number];

interface FormRule {
  readonly form: Form;
  readonly words: RegExp;
  readonly not?: RegExp;
  /** Composition that has to agree; figures that are unknown do not speak against it. */
  readonly when?: (food: Food) => boolean;
}

const atLeast = (value: number | undefined, least: number): boolean => value === undefined || value >= least;
const atMost = (value: number | undefined, most: number): boolean => value === undefined || value <= most;

/** The first rule that fits decides, so the narrow ones stand first. */
const RULES: readonly FormRule[] = [
  { form: 'leavening', words: /baking (powder|soda)|leavening|yeast, baker|yeast/i, not: /nutritional/i },
  { form: 'granola', words: /granola|muesli/i, not: /\bbars?\b/i },
  { form: 'bean_spread', words: /hummus/i },
  { form: 'herb', words: /\b(?:mint|basil|parsley|cilantro|dill)\b/i, not: /tea|chocolate|extract/i },
  { form: 'salt', words: /^(sea |kosher |table )?salt\b/i },
  { form: 'extract', words: /extract|vanilla bean/i, not: /stevia/i },
  {
    form: 'spice',
    words:
      /spice|cinnamon|nutmeg|ginger|cloves|allspice|turmeric|garlic powder|pepper, black|cumin|paprika|oregano|chili/i,
    not: /oat|cookie|tea|root/i,
  },
  {
    form: 'protein_powder',
    words: /protein (powder|isolate|concentrate)|isolate|whey|casein|powder whey|egg white powder/i,
    when: (f) => atLeast(f.per100g.proteinG, 45),
  },
  {
    form: 'dry_powder',
    words: /powder|dry, (nonfat|whole)|peanut flour|milk, dry|dried, powder/i,
    not: /cocoa|sugar|baking/i,
    when: (f) => atMost(f.per100g.waterG, 12),
  },
  { form: 'cocoa', words: /cocoa|cacao powder|carob (powder|flour)/i, not: /butter|mix\b|nib/i },
  {
    form: 'chips',
    words: /chocolate|carob|nibs|chips|white chocolate/i,
    not: /milk, chocolate|chocolate milk|syrup|soymilk|banana|spread|protein|granola|tortilla|mix\b/i,
  },
  {
    form: 'nut_paste',
    words: /butter|tahini|spread|paste/i,
    not: /apple|cookie|buttermilk|fruit|pumpkin butter/i,
    when: (f) =>
      atLeast(f.per100g.proteinG, 5) && atLeast(f.per100g.fatG, 25) && atMost(f.per100g.waterG, 12),
  },
  {
    form: 'creamy_liquid',
    words: /cream|coconut milk, canned|evaporated|condensed|half and half/i,
    not: /cheese|yogurt|ice/i,
  },
  {
    form: 'milk',
    words: /milk|oat drink|soy drink|plant drink|kefir|beverage/i,
    not: /dry\b|chocolate,? (bar|candy)|candies|cheese|yogurt|powder/i,
    when: (f) => atLeast(f.per100g.waterG, 75),
  },
  { form: 'yogurt', words: /yogurt|skyr/i, not: /coated|covered/i },
  { form: 'soft_cheese', words: /cottage|ricotta|cream cheese|cheese, cream|neufchatel|mascarpone/i },
  { form: 'cheese', words: /cheese|cheddar|mozzarella|feta|parmesan|provolone|swiss/i },
  {
    form: 'juice',
    words: /juice|cider|nectar|coconut water|vitamin water|sports drink|tea\b|coffee/i,
    not: /pack|agave|vinegar|canned, juice/i,
    when: (f) => atLeast(f.per100g.waterG, 55),
  },
  { form: 'water', words: /\bwater\b/i, when: (f) => atLeast(f.per100g.waterG, 99) },
  {
    form: 'fruit_puree',
    words:
      /applesauce|puree|purée|apple butter|fruit butter|jam|jell(y|ies)|preserves|pumpkin, canned|pumpkin puree|mashed/i,
  },
  { form: 'syrup', words: /honey|syrup|agave|molasses/i, not: /cookie|cracker|graham|sweetener, herbal/i },
  {
    form: 'sugar',
    words: /sugar/i,
    not: /snap|free|cookie|reduced sugar/i,
    when: (f) => atLeast(f.per100g.sugarsG, 70),
  },
  { form: 'egg', words: /\beggs?\b/i, not: /noodle|dried|powder/i },
  { form: 'small_seed', words: /chia|flax|hemp|sesame seed|poppy/i, not: /oil|milk|flour/i },
  {
    form: 'oil',
    words: /\boil\b/i,
    not: /roasted|packed in oil|canned in oil/i,
    when: (f) => atLeast(f.per100g.fatG, 90),
  },
  {
    form: 'solid_fat',
    words: /butter|margarine|shortening|ghee|lard/i,
    when: (f) => atLeast(f.per100g.fatG, 60),
  },
  { form: 'coconut_flakes', words: /coconut/i, not: /milk|water|flour|sugar/i },
  {
    form: 'flour',
    words: /flour|starch|almond meal|cornmeal|bran\b|wheat germ|arrowroot/i,
    not: /tortilla|bread/i,
  },
  { form: 'puffed_grain', words: /puffed|crisp|popped|popcorn/i, not: /bread/i },
  { form: 'bread', words: /bread|tortilla|wrap|pita|bagel|muffin|bun\b|roll\b/i },
  {
    form: 'snack',
    words: /cracker|pretzel|cookie|graham|granola bar|rice cake|trail mix|jerky|marshmallow|cand(y|ies)/i,
    not: /seed/i,
  },
  {
    form: 'rolled_grain',
    words: /\boats?\b|rolled|flakes/i,
    not: /cooked|milk|almonds?|coconut|steel-cut/i,
  },
  {
    form: 'cooked_grain',
    words: /cooked|quinoa|rice|pasta|millet|buckwheat/i,
    not: /meat|beef|chicken|fish|beans|lentils|potato|oil|egg/i,
  },
  {
    form: 'seed',
    words: /seed|pepita/i,
    not: /seedless|mature seeds|seeded|mustard/i,
    when: (f) => atLeast(f.per100g.fatG, 30),
  },
  {
    form: 'nut',
    words: /nuts?\b|almond|cashew|pecan|walnut|pistachio|hazelnut|macadamia|soybeans?, .*roasted|soy nuts/i,
    not: /nutmeg|coconut|peanut butter|doughnut/i,
    when: (f) => atLeast(f.per100g.fatG, 18),
  },
  { form: 'starchy_vegetable', words: /potato|plantain|\byam\b/i, not: /chip|flour|starch|raw/i },
  { form: 'meat', words: /chicken|turkey|beef|ham|bacon|pork|sausage/i, not: /broth|graham|champ/i },
  { form: 'fish', words: /tuna|salmon|fish|shrimp/i },
  {
    form: 'plant_protein',
    words: /tofu|tempeh|bean|lentil|chickpea|edamame/i,
    not: /sauce|vanilla|cocoa|jelly|green bean/i,
  },
  {
    form: 'sauce',
    words: /sauce|salsa|dressing|mayonnaise|vinegar|mustard|ketchup|pesto|guacamole/i,
    not: /apple/i,
  },
];

const forms = new WeakMap<Food, Form>();

/** The form of a food, remembered per food object. */
export function formOf(food: Food): Form {
  const known = forms.get(food);
  if (known) return known;
  const description = food.source.kind === 'usda_sr28' ? food.source.description : '';
  const form = food.product?.proteinSource
    ? 'protein_powder'
    : (ruled(food, food.name) ?? ruled(food, description) ?? byGroup(food));
  forms.set(food, form);
  return form;
}

const ruled = (food: Food, words: string): Form | undefined =>
  words === ''
    ? undefined
    : RULES.find((r) => r.words.test(words) && !r.not?.test(words) && (r.when?.(food) ?? true))?.form;

function byGroup(food: Food): Form {
  const water = food.per100g.waterG;
  if (/fruit/i.test(food.group)) return water !== undefined && water < 40 ? 'dried_fruit' : 'fresh_fruit';
  if (/vegetable/i.test(food.group)) return 'vegetable';
  return 'other';
}

/** Forms a cook would also reach for, and how readily (1 is the same form). Both directions unless listed twice. */
const NEAR: readonly (readonly [Form, Form, number])[] = [
  ['milk', 'water', 0.35],
  ['milk', 'creamy_liquid', 0.4],
  ['juice', 'water', 0.5],
  ['syrup', 'sugar', 0.5],
  ['syrup', 'fruit_puree', 0.35],
  ['sugar', 'fruit_puree', 0.2],
  ['protein_powder', 'dry_powder', 0.3],
  ['yogurt', 'soft_cheese', 0.5],
  ['cheese', 'soft_cheese', 0.4],
  ['granola', 'rolled_grain', 0.4],
  ['granola', 'puffed_grain', 0.5],
  ['granola', 'nut', 0.3],
  ['granola', 'seed', 0.3],
  ['rolled_grain', 'puffed_grain', 0.5],
  ['rolled_grain', 'flour', 0.2],
  ['nut', 'seed', 0.85],
  ['nut', 'coconut_flakes', 0.45],
  ['seed', 'coconut_flakes', 0.45],
  ['seed', 'small_seed', 0.4],
  ['nut', 'puffed_grain', 0.4],
  ['seed', 'puffed_grain', 0.4],
  ['nut', 'chips', 0.25],
  ['nut', 'dried_fruit', 0.25],
  ['seed', 'dried_fruit', 0.25],
  ['chips', 'dried_fruit', 0.4],
  ['chips', 'seed', 0.3],
  ['chips', 'coconut_flakes', 0.4],
  ['coconut_flakes', 'puffed_grain', 0.4],
  ['coconut_flakes', 'dried_fruit', 0.3],
  ['small_seed', 'coconut_flakes', 0.3],
  ['oil', 'solid_fat', 0.6],
  ['oil', 'nut_paste', 0.2],
  ['solid_fat', 'nut_paste', 0.3],
  ['nut_paste', 'fruit_puree', 0.25],
  ['egg', 'fruit_puree', 0.3],
  ['meat', 'fish', 0.6],
  ['meat', 'plant_protein', 0.6],
  ['fish', 'plant_protein', 0.5],
  ['snack', 'puffed_grain', 0.6],
  ['snack', 'nut', 0.3],
  ['snack', 'seed', 0.3],
  ['dried_fruit', 'fresh_fruit', 0.3],
  ['starchy_vegetable', 'cooked_grain', 0.5],
  ['starchy_vegetable', 'vegetable', 0.2],
  ['bean_spread', 'plant_protein', 0.5],
  ['bean_spread', 'soft_cheese', 0.4],
  ['soft_cheese', 'plant_protein', 0.35],
  ['yogurt', 'plant_protein', 0.15],
];

const affinities = new Map<string, number>(
  NEAR.flatMap(([a, b, value]) => [
    [`${a}>${b}`, value],
    [`${b}>${a}`, value],
  ]),
);

/** How readily a cook takes one form for the other: 1 the same, 0 never. */
export const affinity = (from: Form, to: Form): number =>
  from === to ? 1 : (affinities.get(`${from}>${to}`) ?? 0);
