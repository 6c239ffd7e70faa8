/**
 * Words a message may be made of and still need no look at the signs: the names, numbers and small words of an
 * ordinary request. Any other word has the signs read, so a word missing here costs time and never an emergency.
 */
export const CALM_WORDS: ReadonlySet<string> = new Set(
  `a an the of for with and or to in on at by from per each every into my our we us please pls thanks need make made making give gimme want
  scale double triple half batch batches recipe recipes much many how what whats is are do does has have left stock
  oat oats bar bars bite bites muffin muffins cookie cookies roll rolls wrap wraps square squares parfait parfaits smoothie smoothies
  granola trail mix bag bags cherry cherries date dates chocolate cocoa banana pumpkin berry strawberry blueberry cranberry sunflower
  turkey hummus sandwich seed seeds overnight almond apricot peanut butter honey syrup maple yogurt milk egg eggs nut nuts free
  cup cups tbsp tsp tablespoon tablespoons teaspoon teaspoons g gram grams kg oz ounce ounces lb lbs pound pounds ml liter liters
  piece pieces serving servings people athletes players macros protein carbs calories fat fiber sodium sugar
  today tomorrow yesterday monday tuesday wednesday thursday friday saturday sunday mon tue wed thu fri sat sun
  fridge freezer shelf schedule next game games cost shopping list swap temp cut convert dozen`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

const NUMBERS_TO_CALL = new Set(['911', '999', '112']);

/** No word that could belong to a sign. */
export function isCalm(said: string): boolean {
  let from = 1;
  while (from < said.length) {
    const to = said.indexOf(' ', from);
    const word = said.slice(from, to);
    const isNumber = word.charCodeAt(0) < 58;
    if (isNumber ? NUMBERS_TO_CALL.has(word) : !CALM_WORDS.has(word)) return false;
    from = to + 1;
  }
  return true;
}
