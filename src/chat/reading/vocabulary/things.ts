const list = (text: string): readonly string[] =>
  text
    .trim()
    .split(/\s*[,\n]\s*/)
    .filter((entry) => entry !== '');

/** Words for one piece of what is made; the value is the slot's singular. */
export const PIECES: Readonly<Record<string, readonly string[]>> = {
  bar: list('bar'),
  bite: list('bite'),
  ball: list('ball'),
  muffin: list('muffin'),
  cookie: list('cookie'),
  roll: list('roll'),
  wrap: list('wrap'),
  sandwich: list('sandwich, sammie'),
  parfait: list('parfait'),
  smoothie: list('smoothie, shake'),
  serving: list('serving, portion, srv'),
  piece: list('piece, pc, pcs, square'),
  snack: list('snack, snack bag, snack pack'),
  person:
    list(`person, people, ppl, athlete, player, guy, kid, girl, swimmer, runner, lineman, linemen, head, mouth,
    traveler, traveller, student, student athlete, staff member, teammate, rower, wrestler, guest`),
};

/** Dishes a kitchen of this kind makes, known even when this kitchen has no such recipe. */
export const DISHES =
  list(`granola, trail mix, overnight oats, overnight oat, yogurt parfait, parfait cup, energy bite,
  energy ball, protein ball, protein bar, oat bar, cherry bar, granola bar, snack mix, chia pudding, egg bite, egg muffin,
  fruit smoothie, protein shake, breakfast burrito, turkey roll, egg sandwich, crispy rice treat, pb bar, peanut butter bar,
  protein pancake, rice bar, no bake bar, no bake bite, fruit leather, energy bar, fig bar, oatmeal cup, bircher, muesli cup`);

/** Last words of dishes' names, known even when this kitchen makes none: "blueberry scones", "kale chips". */
export const DISH_NOUNS: ReadonlySet<string> = new Set(
  list(`scone, brownie, cupcake, pancake, waffle, biscuit, cake, loaf, pudding, casserole, frittata, quiche, burrito,
  quesadilla, taco, pizza, lasagna, soup, stew, chili, curry, salad, stir fry, bowl, dip, crisp, cobbler, pie, tart, donut,
  doughnut, croissant, omelette, omelet, scramble, slider, burger, kebab, skewer, fritter, flapjack, truffle, cluster, popsicle,
  milkshake, latte, lemonade, blondie, macaroon, crumble, toast, bagel, nugget, meatball, chip`),
);

/** Foods by their everyday names; a kitchen's own names and ids come before these. */
export const FOODS =
  list(`oat, rolled oat, quick oat, oatmeal, old fashioned oat, steel cut oat, oat bran, oat flour,
  peanut butter, pb, peanut, almond butter, almond, sunflower butter, sunflower seed butter, sun butter,
  sunflower seed, cashew butter, cashew, walnut, pecan, pistachio, hazelnut, macadamia, nut butter, seed butter, tahini,
  sesame seed, chia, chia seed, flax, flaxseed, flax seed, flax meal, hemp seed, hemp heart, pumpkin seed, pepita,
  milk, whole milk, skim milk, 2% milk, soy milk, soymilk, almond milk, oat milk, oatmilk, coconut milk, rice milk,
  chocolate milk, buttermilk, cream, half and half, butter, ghee, margarine, cheese, cheddar, string cheese,
  cottage cheese, cream cheese, mozzarella, yogurt, yoghurt, greek yogurt, kefir, whey, whey protein, protein powder,
  powder, vanilla whey, vanilla protein, chocolate protein, soy protein, pea protein, egg white, egg white powder, egg,
  casein powder, honey, maple syrup, syrup, agave, molasses, sugar, brown sugar, corn syrup, jam, jelly,
  banana, apple, applesauce, berry, blueberry, strawberry, raspberry, cranberry, dried cranberry, cherry, dried cherry,
  tart cherry, tart cherry juice, date, medjool date, raisin, fig, prune, apricot, dried apricot, mango, pineapple,
  orange, orange juice, lemon, lemon juice, lime, grape, peach, pear, kiwi, melon, avocado, coconut, coconut flake,
  coconut oil, olive oil, evoo, canola oil, vegetable oil, oil, salt, kosher salt, sea salt, baking soda, baking powder,
  yeast, cinnamon, vanilla, vanilla extract, cocoa, cocoa powder, chocolate chip, choc chip, chocolate, dark chocolate,
  flour, wheat flour, almond flour, coconut flour, bread, bagel, tortilla, pita, pretzel, cracker, graham cracker,
  rice, brown rice, quinoa, puffed rice, crispy rice, rice cereal, cereal, cornflake, granola cereal, pasta, potato,
  sweet potato, carrot, spinach, tomato, cucumber, celery, pepper, onion, broccoli, hummus, bean, black bean, chickpea,
  lentil, tofu, edamame, turkey, chicken, ham, bacon, beef, tuna, salmon, shrimp, jerky, water, coffee, tea, juice,
  ice, matcha, ginger, turmeric, nutmeg, popcorn, m&m, marshmallow, wheat germ, wheat bran, bran, dried fruit, fruit,
  sour cream, heavy cream, whipped cream, cow milk, cows milk, regular milk, dairy milk, goat milk, hemp milk, cashew milk,
  evaporated milk, condensed milk, plain yogurt, vanilla yogurt, soy yogurt, coconut yogurt, ricotta, feta, parmesan, shortening,
  coconut sugar, stevia, splenda, cane sugar, powdered sugar, date syrup, corn starch, cornstarch, cornmeal, arrowroot, xanthan gum,
  oat flour, rice flour, whole wheat flour, flax egg, chia egg, nutritional yeast, tempeh, seitan, kale, lettuce, romaine, zucchini,
  squash, pumpkin, pumpkin puree, corn, pea, green bean, kidney bean, mushroom, garlic, cilantro, basil, parsley, salsa, guacamole,
  mustard, mayo, ketchup, vinegar, soy sauce, ranch, noodle, spaghetti, couscous, farro, barley, rye, pistachio butter,
  almond extract, blackberry, nectarine, plum, watermelon, cantaloupe, grapefruit, papaya, cauliflower, asparagus, beet,
  pork, sausage, pepperoni, steak, ground beef, lamb, cod, tilapia, crab, protein granola, wheat bread, english muffin`);

/** What is taken beside food. Values are how the slot names it. */
export const SUPPLEMENTS: Readonly<Record<string, readonly string[]>> = {
  creatine: list('creatine, creatine monohydrate'),
  caffeine: list('caffeine, caffeine pill, caffeine gum'),
  'pre-workout': list('pre workout, preworkout, pre work out, pre workout powder, pre workout drink'),
  bcaa: list('bcaa, bcaas, branched chain amino acid, eaa, amino acid, aminos'),
  'beta alanine': list('beta alanine, beta-alanine'),
  'fish oil': list('fish oil, omega 3, omega 3s, omega3'),
  collagen: list('collagen, collagen powder, collagen peptide'),
  melatonin: list('melatonin, melatonin gummies'),
  ashwagandha: list('ashwagandha, ashwaganda'),
  'fat burner': list('fat burner, fat burner pill, diet pill, thermogenic'),
  'energy drink': list('energy drink, energy shot'),
  multivitamin: list('multivitamin, multi vitamin, vitamin pill, vitamin gummies, vitamin supplement'),
  'iron pill': list('iron pill, iron supplement, iron tablet'),
  cbd: list('cbd, cbd oil, cbd gummies'),
  'beet juice': list('beet juice, beetroot, beetroot juice, beet root, nitrate shot'),
  electrolyte: list('electrolyte, electrolyte powder, electrolyte tablet, electrolyte packet, salt tablet'),
  glutamine: list('glutamine'),
  supplement: list('supplement, supps'),
  'testosterone booster': list('test booster, testosterone booster, t booster'),
  sarms: list('sarm, sarms'),
  dhea: list('dhea'),
  zma: list('zma, zinc supplement'),
  magnesium: list('magnesium pill, magnesium supplement, magnesium glycinate'),
  'vitamin d': list('vitamin d pill, vitamin d supplement, vitamin d gummies'),
  probiotic: list('probiotic'),
  'mass gainer': list('mass gainer, weight gainer, gainer'),
  'sodium bicarbonate': list('bicarb, sodium bicarbonate'),
  'protein powder': list('protein supplement'),
};

/** Sports by the words that stand for them; the value is the slot. */
export const SPORTS: Readonly<Record<string, readonly string[]>> = {
  soccer: list('soccer, womens soccer, mens soccer, wsoc, msoc'),
  football: list('football, fball'),
  basketball: list('basketball, hoops, mbb, wbb, womens basketball, mens basketball, bball'),
  volleyball: list('volleyball, vball, vb'),
  baseball: list('baseball'),
  softball: list('softball'),
  swimming: list('swimming, swim, swim team, swimmer, swim and dive'),
  track: list('track, track and field, sprinter'),
  'cross country': list('cross country, xc'),
  tennis: list('tennis'),
  golf: list('golf'),
  rowing: list('rowing, crew'),
  wrestling: list('wrestling, wrestler'),
  lacrosse: list('lacrosse, lax'),
  hockey: list('hockey, field hockey, ice hockey'),
  gymnastics: list('gymnastics, gymnast'),
  'water polo': list('water polo, polo'),
  rugby: list('rugby'),
  cycling: list('cycling'),
};

/** Where food stands, besides the kitchen's own names. */
export const LOCATIONS =
  list(`fridge, refrigerator, frig, reefer, cooler, walk in, walkin, walk in cooler, walk in fridge, walk in freezer,
  reach in, reachin, freezer, chest freezer, deep freeze, mini fridge, pantry, dry storage, fueling station, bus cooler, prep fridge,
  milk cooler, ice chest, hot box, warmer, hot well, steam table`);

/** Pans by the words for them. */
export const PANS: Readonly<Record<string, readonly string[]>> = {
  'half sheet': list('half sheet, half sheet pan, half sheets'),
  'full sheet': list('full sheet, sheet pan, full sheet pan, sheet tray'),
  'quarter sheet': list('quarter sheet, quarter sheet pan, 1/4 sheet'),
  'hotel pan': list('hotel pan, full hotel pan, steam table pan'),
  'half hotel': list('half hotel pan, half hotel'),
  'loaf pan': list('loaf pan'),
};
