import type { AllergenMark } from '../nutrition/allergens.ts';

type Allergen = AllergenMark['allergen'];

interface NameRule {
  readonly allergen: Allergen;
  readonly words: RegExp;
  /** Phrases that hold one of the words and are something else: taken out before looking. */
  readonly innocent?: RegExp;
  /** A refined oil may carry it as an advisory only: FD&C Act 201(qq)(2). */
  readonly advisoryWillDo?: true;
}

const NOT_DAIRY =
  /\b(?:coconut|almond|oat|rice|soy|soya|cashew|hemp|pea|hazelnut|macadamia|flax|plant|nut|seed|non-?dairy|dairy-?free|vegan) ?(?:milk|cream|yogurt|cheese|butter|creamer)|\b(?:peanut|almond|cashew|nut|seed|sunflower(?: seed)?|soy|soynut|sesame|apple|pumpkin(?: seed)?|cocoa|shea|hazelnut|pistachio|pecan|walnut|tahini|fruit|cookie|tiger nut|watermelon seed) ?butter|\bbutter (?:beans?|lettuce)|\bcream of (?:tartar|wheat|rice)|\bice cream salt|\bmilk ?-?free|\bmilk thistle|\bwithout (?:milk|dairy|butter|cheese)|\bdairy ?-?free|\bno (?:milk|dairy)\b/g;
const NOT_WHEAT = /\b(?:wheat|gluten) ?-?free|\bfree from wheat|\bbuckwheat|\bno wheat|\bcream of rice/g;
/** Foods made of wheat unless their name says another grain, or that they are gluten-free. */
const OTHER_GRAIN =
  /^.*\bgluten[- ]free\b.*$|\b(?:rice|oat|corn|almond|coconut|chickpea|soy|peanut|potato|tapioca|arrowroot|sorghum|millet|quinoa|cassava|carob|sunflower seed|pea|lupin|hazelnut|banana|teff|amaranth|flaxseed|buckwheat) flour|\b(?:corn|rice|almond flour|cassava|lentil|chickpea) (?:tortillas?|pasta|crackers?|cakes?|noodles?|bread)/g;

/**
 * Words of a name or an ingredients statement that must not stand there without the allergen being declared.
 * Sources of what counts: FD&C Act 201(qq) and 403(w); FDA, Questions and Answers Regarding Food Allergens,
 * edition 5 (January 2025): tree nuts of its Table 1, lecithin counts, milk of any animal.
 */
const RULES: readonly NameRule[] = [
  {
    allergen: 'milk',
    words:
      /\b(?:(?:butter|skim)?milk|milkfat|cheese|cheddar|mozzarella|feta|parmesan|ricotta|provolone|neufchatel|butter|ghee|cream|half[- ]and[- ]half|yogh?urt|kefir|whey|caseins?|caseinate|lactose|custard|dulce de leche)\b/,
    innocent: NOT_DAIRY,
  },
  {
    allergen: 'egg',
    words: /\b(?:eggs?|albumen|albumin|mayonnaise|mayo|meringue|egg ?nog)\b/,
    innocent:
      /\begg ?-?free|\bwithout eggs?|\bno eggs?|\bvegan (?:egg|mayo(?:nnaise)?)|\bflax eggs?|\begg (?:replacer|plant)/g,
  },
  {
    allergen: 'wheat',
    words:
      /\b(?:wheat|wholewheat|seitan|semolina|spelt|farro|bulgur|durum|kamut|einkorn|emmer|triticale|couscous|graham)\b/,
    innocent: NOT_WHEAT,
  },
  {
    allergen: 'wheat',
    words:
      /\b(?:flour|bread|breadcrumbs?|bagels?|pita|tortillas?|crackers?|saltines?|pretzels?|pasta|spaghetti|macaroni|english muffins?|cookies?|naan|panko)\b/,
    innocent: OTHER_GRAIN,
  },
  {
    allergen: 'gluten_cereal',
    words: /\b(?:barley|malt(?:ed)?|rye|oats?|oatmeal|oat bran)\b/,
    innocent: /\boat ?-?free/g,
  },
  {
    allergen: 'peanut',
    words: /\b(?:peanuts?|groundnuts?|mixed nuts with peanuts)\b/,
    innocent: /\bpeanut ?-?free|\bwithout peanuts?|\bno peanuts?|\bpeanut oil/g,
  },
  { allergen: 'peanut', words: /\bpeanut oil\b/, advisoryWillDo: true },
  {
    allergen: 'tree_nut',
    words:
      /\b(?:almonds?|marzipan|frangipane|cashews?|walnuts?|pecans?|hazelnuts?|filberts?|gianduja|macadamias?|pistachios?|brazil ?nuts?|pine ?nuts?|pinon|pignoli|praline|heartnuts?|mixed nuts|tree nuts?)\b/,
    innocent: /\b(?:tree )?nut ?-?free|\bwithout (?:tree )?nuts|\bno (?:tree )?nuts/g,
  },
  {
    allergen: 'soy',
    words:
      /\b(?:soy|soya|soybeans?|soymilk|soynuts?|tofu|tempeh|edamame|miso|tamari|natto|shoyu|soy lecithin|textured vegetable protein|tvp)\b/,
    innocent: /\bsoy ?-?free|\bwithout soy|\bno soy|\bsoy(?:bean)? oil/g,
  },
  { allergen: 'soy', words: /\bsoy(?:bean)? oil\b/, advisoryWillDo: true },
  {
    allergen: 'sesame',
    words: /\b(?:sesame|tahini|tahina|halva|halvah|benne|gingelly|hummus|everything (?:bagel )?seasoning)\b/,
    innocent: /\bsesame ?-?free|\bwithout (?:sesame|tahini)/g,
  },
  {
    allergen: 'fish',
    words: /\b(?:fish|tuna|salmon|cod|anchov(?:y|ies)|sardines?|tilapia|trout|halibut|worcestershire)\b/,
    innocent: /\bfish ?-?free|\bgoldfish crackers|\bvegan worcestershire/g,
  },
  {
    allergen: 'shellfish',
    words: /\b(?:shrimps?|prawns?|crabs?|lobsters?|crayfish|crawfish|krill)\b/,
    innocent: /\bcrab ?apples?|\bimitation crab flavor/g,
  },
  {
    allergen: 'mollusc',
    words: /\b(?:oysters?|clams?|mussels?|scallops?|squid|calamari|octopus|snails?)\b/,
    innocent: /\boyster (?:crackers?|mushrooms?)/g,
  },
  { allergen: 'celery', words: /\b(?:celery|celeriac)\b/ },
  { allergen: 'mustard', words: /\bmustard\b/ },
  { allergen: 'lupin', words: /\b(?:lupine?|lupini)\b/ },
  {
    allergen: 'sulphites',
    words: /\b(?:sulfur dioxide|sulphur dioxide|sulfites?|sulphites?|metabisulfite|sulfured)\b/,
    innocent: /\bunsulfured|\bsulfite ?-?free/g,
  },
  { allergen: 'coconut', words: /\bcoconuts?\b/, innocent: /\bcoconut ?-?free/g },
  { allergen: 'chestnut', words: /\bchestnuts?\b/, innocent: /\bwater chestnuts?/g },
  {
    allergen: 'sunflower',
    words: /\bsunflower\b/,
    innocent: /\bsunflower (?:oil|lecithin)|\bhigh oleic sunflower oil/g,
  },
  { allergen: 'pumpkin_seed', words: /\b(?:pumpkin seeds?|pepitas?)\b/ },
];

export interface Declared {
  readonly contains: readonly AllergenMark[];
  readonly advisory: readonly AllergenMark[];
}

export interface Undeclared {
  readonly allergen: Allergen;
  /** The word that demands it. */
  readonly word: string;
}

/**
 * Allergens that words demand and a food does not declare. Sound in one direction only: what it finds is missing,
 * but a text without such words may still hold an allergen.
 *
 * @example
 * undeclared('Peanut butter cups with whey', { contains: [{ allergen: 'peanut' }], advisory: [] })
 * // [{ allergen: 'milk', word: 'whey' }]
 */
export function undeclared(text: string, declared: Declared): Undeclared[] {
  const plain = text
    .toLowerCase()
    .replace(/[()[\],;:.]/g, ' , ')
    .replace(/\s+/g, ' ');
  const found = new Map<Allergen, Undeclared>();
  for (const rule of RULES) {
    const left = rule.innocent === undefined ? plain : plain.replace(rule.innocent, ' ');
    const word = rule.words.exec(left)?.[0];
    const marks = rule.advisoryWillDo ? [...declared.contains, ...declared.advisory] : declared.contains;
    if (word === undefined || marks.some((mark) => mark.allergen === rule.allergen)) continue;
    if (!found.has(rule.allergen)) found.set(rule.allergen, { allergen: rule.allergen, word });
  }
  return [...found.values()];
}
