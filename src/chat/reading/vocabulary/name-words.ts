/** Words of allergen and swap questions that stand beside a name without being part of it. */
export const ASKING_WORDS: ReadonlySet<string> = new Set(
  `allergen allergens allergy allergies allergic contain contains containing contaminate contaminated cross free severe deadly
  intolerant intolerance trace traces brand supplier formula product allergically vs versus vegan vegetarian
  nutritionally recipe recipes version versions variant ingredient ingredients cups bags pieces servings serving
  sub subs subbing subbed substitute substitutes substituted reformulated substitution swap swaps swapping replace replacing replacement alternative
  alternatives instead facility certified label labels labelled labeled safe options nutrition nutritional facts panel`.split(
    /\s+/,
  ),
);

/**
 * Everyday words that, beside a food or a piece, make another dish of it: "oat crunch", "power bites", "cherry pie".
 * Known words, so that no spelling is put right toward them, yet never to be passed over in a name.
 */
export const NAMING_WORDS: ReadonlySet<string> = new Set(
  `amazing awesome baby baked base basic bitter black blended blue board body boom boost breakfast brown bunch burn cake camp captain
  champion chew chewy chunk city classic cloud club cluster coach college color cookie country cream crazy crisp crispy crowd crowned
  crumb crumble crunch crunchy cup dark deep delight deluxe dinner direct dish double dough dream dry edge energy
  excellent explosion extra face fancy fat favorite feast field filled fire flat flavor flower force forest fruit fruity fudge
  fun funny fusion game glow goal golden grand green ground gum halftime happy heaven heavy hero hill honest house huge hunger
  ice insane island jack jam joy joyful jumbo jungle kick king land layer layered light lightning lite little load loaf local
  love lucky magic main marathon master max mega melt melted midnight mighty mini mix mixed mixture moist monkey monster moon
  morning mountain mouth natural nature night nugget nuts ocean odd orange original party peace perfect pie pink planet play pop
  pow power premium pressed prime pudding puff pure purple quick rainbow raw recovery red rich ride river road rock
  rocket rough round royal run rush salty school sea secret shake shape share silk simple sky slam slice smooth soft
  sour spark special spicy spirit spread sprint squeeze stack star sticky stick stix storm straight strange strong stuff stuffed
  summer sun sunny sunrise sunset super supreme surprise sweet swirl tasty team thick thin thrill thunder tiny top
  topped touch track trail train travel treat treats triple tropical truck turbo twist ultra victory warrior water wave white whole
  wild wind winner winter wonder world wrap yellow yum yummy zen zest zip`.split(/\s+/),
);

/** Allergens as they are asked about; "peanut" and "egg" before a dish are a part of its name. */
export const ASKED_ALLERGENS: ReadonlySet<string> = new Set(
  `nuts dairy gluten lactose peanuts eggs almonds cashews walnuts pecans pistachios hazelnuts casein allergen allergens soya tree
  shellfish sulfites sulphites`.split(/\s+/),
);

/** Words that end a name where they stand: what comes before and after them is not one thing. */
export const ENDS_A_NAME: ReadonlySet<string> = new Set(
  `the and our your his her their this that these those for from with without are was were has have had does did can could
  should would will may might must any some all contain contains eat eats eating ate give serve use using made make put add
  out not but because who what which when where how than then into about like want wants need needs get gets also too very
  has him she they you its per each every only just still now today tomorrow tonight yesterday please instead`.split(
    /\s+/,
  ),
);
