/**
 * What people say of machines, dough and a good season in the words of harm. Taken out before the signs are looked
 * for, so that a real sign beside them still counts.
 */
const IDIOMS: readonly RegExp[] = [
  // Machines and things that choke, burn, shake, die or do not respond.
  / (?:mixer|blender|motor|machine|processor|grinder|disposal|drain|engine|printer|fryer|sealer|vacuum|dishwasher|compressor) (?:[a-z]+ ){0,3}(?:chok\w*|seiz\w*|shaking|dying|dead|burning out|overheat\w*|not responding|unresponsive|collapsed) /g,
  / (?:app|bot|slack|printer|wifi|website|system|tablet|laptop|computer|screen|scale|supplier|vendor|driver|rep|coach|email|chat|phone|thermometer|sensor) (?:[a-z]+ ){0,3}(?:not respond\w*|unresponsive|wont respond|isnt respond\w*|stopped respond\w*|not answering|wont wake up|dying|dead|no response) /g,
  / (?:respond\w*|answering|response) (?:to |from )(?:the |my |our |any )?(?:emails?|texts?|messages?|slack|dms?|calls?|supplier|vendor|survey|order|form) /g,
  // A thing that stands still, and not somebody beside it.
  /(?<! (?:in|on|at|by|near|into|inside|behind|under|from|off|with|to|beside|against)(?: the| my| our| a| an| this| that)?) (?:mixer|blender|processor|fan|belt|dial|motor|slicer|grinder|fridge|freezer|oven|dough|batter|slab|timer|conveyor|dishwasher) (?:just |has |have |also |suddenly |completely |still |again )*(?:stopped|isnt|wont|doesnt|wasnt|is not) (?:even )?(?:respond\w*|moving|move|turning|reacting|working) /g,
  // Food that swells, falls, seizes, bleeds or burns.
  / (?:chocolate|ganache|caramel|dough|batter) (?:[a-z]+ ){0,3}(?:seiz\w*|collaps\w*|chok\w*|breathe|swell\w*|swollen|puff\w*) | (?:seized|seizing) (?:up )?(?:chocolate|ganache|caramel) /g,
  / (?:muffins?|cakes?|bread|loaf|loaves|bakes?|souffles?|bars?|cookies|parfaits?|foam|crust|roof of the muffin|egg squares?) (?:[a-z]+ ){0,3}(?:collaps\w*|fell|sank|deflated|bleed\w*|died|swell\w*|puff\w*) /g,
  / (?:berries|cherries|strawberries|blueberries|beets?|color|dye|food coloring|filling|juice) (?:[a-z]+ ){0,3}(?:bleed\w*|ran) /g,
  / (?:oats?|chia|seeds?|grains?|raisins?|rice|beans?|packages?|pouch|pouches|cans?|containers?|lids?) (?:[a-z]+ ){0,3}(?:swell\w*|swollen|puff\w*|bulg\w*|balloon\w*|inflat\w*|blown up|blew up) /g,
  / (?:puffed|puffy) (?:rice|quinoa|wheat|millet|grains?|cereal|corn|amaranth|oats|bars?|muffins?|tops?) | rice puffs? /g,
  / overdos\w* (?:it )?(?:on |with )?(?:the )?(?:salt|cinnamon|honey|vanilla|sugar|syrup|baking (?:soda|powder)|cocoa|ginger|nutmeg|oats|dates|spice|spices|garlic|lemon|water|flour) /g,
  / chok(?:e|ing) hazards? | chok(?:e|ed|ing) (?:it |them )?down | chok(?:e|ing) (?:up|artists?) (?:in|at|on) /g,
  / chok(?:e|ed|ing) (?:in|at|on|away|under) (?:the )?(?:game|free throws?|fourth|4th|final|finals|penalty|penalties|big|clutch|lead|pressure|last|end|second half|playoffs?|series|ninth) /g,
  / drown\w* in (?!(?:the |a )?(?:pool|lake|water|river|ocean|sea|tub|bath|ice bath|cold tub))| drown\w* (?:the|it|them|those|these) /g,
  // Handed round, not fallen down: what is passed out is food.
  / pass(?:ed|es|ing)? out (?:(?:the|some|all|our|my|these|those|more|extra|leftover|last|of|a|an|dozen|about|like|\d+|twenty|thirty|forty|fifty) ){1,4}(?:(?!after|from|when|while|before|during|on|in|at|because|near|by|eating|holding|minutes?|mins?|times?|hours?|seconds?|ago|and|with)[a-z]+ ){0,2}(?:bars?|bites?|muffins?|rolls?|wraps?|parfaits?|smoothies?|snacks?|cookies|squares?|sandwiches|bags?|packs?|cups?|shakes?|granola|trail mix|oats) /g,
  / pass(?:ed|es|ing)? out of (?:the |its )?(?:pan|mold|oven|mixer|form|machine|sheet|tray) | collapse (?:the |this |that |all |my |these )*(?:list|lists|section|menu|box|boxes|view|thread|table|tables|cart|sidebar|canopy|tent|cells?|rows?) | pulse (?:button|setting|mode|function|it|the|until|a few|oats|nuts|dates) /g,
  // A wrong entry, and not a wrong bite.
  / (?:served|gave|handed|made|logged|entered|took|counted|tossed|moved|ordered|scaled|sent|put|packed|wrapped|deleted|opened|typed) (?:out |away |in |up )?(?:\d+|all|too many|double|twice|the wrong (?:number|count|amount|date|day|fridge|shelf|team)) (?:(?!nuts?|peanuts?|pb|almonds?|cashews?|walnuts?|milk|dairy|eggs?|soy|wheat|sesame|fish|gluten|allerg)[a-z]+ ){0,4}(?:by|on) (?:mistake|accident) (?!.*(?:allerg|free|reaction|epi))/g,
  / emergency (?:stash|batch|backup|snacks?|bars?|bites?|muffins?|rations?|supply|supplies|stock|exit|fund|order|run|meeting|fuel|drill|shelf|freezer|binder|pantry|shopping|bake) /g,
  / (?:mix|bars?|bites?|recipe|batch|flavou?rs?|jerseys?|design|playlist|gear|logo|texture|these|those|smoothies?|muffins?) (?:is|are|was|were|looks?|tastes?) (?:so |really |actually |pretty |straight )*sick (?=$|everyone|everybody|lol|dude|bro|thanks|thank|love|we|can|make|good|nice|\d)/g,
  / doses? of (?:salt|vanilla|cinnamon|sugar|honey|cocoa|protein|powder|baking (?:soda|powder)|syrup|flavor) (?:in|per|for) (?:a|the|each|one|every) | (?:tongue|button) depressors? /g,
  // A season, a crowd or an appetite.
  / (?:team|offense|defense|squad|bats|pitcher|shooter|striker|lineup|girls|guys|boys|he|she|we|they|hes|shes|theyre|were|im|season|practice|kitchen crew|interns?|everyone|herons) (?:is |are |was |were |been |just |so |really |absolutely |literally |straight |totally )*on fire (?=this|lately|lol|haha|from|all season|all year|all week|recently|rn lol|at the plate|tonight lol|last|shooting|right now lol|out there|since|in the standings|with)/g,
  / on fire (?:this|last) (?:season|week|year|month|series|weekend|tournament|stretch) | on fire (?:lately|lol|haha|from three|at the plate|all season|all year|recently) /g,
  / (?:dying|die|died|dead|starv\w*) (?:for|of|from) (?:a |an |some |the |these |those |more |your |our |my |one |another |laughter|laughing|hunger|boredom|thirst|curiosity|cuteness|to (?:try|know|see|eat|have|get))/g,
  / to die for | drop dead (?:gorgeous|delicious) | dying to (?:try|know|eat|have|see|get|taste|make|hear) | dead (?:tired|serious|set|line|lift|lifts|on|simple|easy|lifting|weight) | dead ?lift\w* /g,
  / (?:kill|killed|killing|murder|murdered) (?:it|for|the (?:game|vibe|batch|recipe|mood|test|presentation|workout|other team)|them (?:on|in|at)|that batch|those|these) | (?:would|could|will) kill for | killer (?:bars?|bites?|snack|recipe|muffins?|batch|workout) | (?:bars?|bites?|muffins?|snacks?) (?:are|is|were) killer /g,
  / heart attack (?:on a plate|in a bar) | (?:gave|give|giving|almost had) (?:me|us|coach|everyone)? ?(?:a )?(?:mini )?heart attack (?=lol|haha|but|when|because)/g,
  / (?:sick|nasty|insane|wicked) (?:recipe|bars?|bites?|batch|game|goal|play|shot|dunk|win) | so sick lol /g,
  / (?:blue|black|purple) (?:cheese|berry|berries|corn|potato|potatoes|tape|team|jersey|jerseys|bars?|bites?|bin|lid|label|labels|cooler|tub|tray|bags?|container|sticker|dot|cups?) /g,
  / stroke (?:of|rate|play|count) | (?:butterfly|breast|back|free) ?strokes? /g,
  / (?:fire|fired) (?:up|drill|roasted|code|sale|inspection|inspector|marshal|exit|lane|door) | (?:spicy|hot) fire | fire (?:bars?|bites?|recipe|snack|batch|lol) | (?:bars?|bites?|muffins?|these|those|they|recipe|snacks?|smoothies?) (?:are|is|were|was|be|taste|tasted) (?:straight |so |absolutely |literally )?fire /g,
  / (?:pan|sheet|oven|rack|bars?|bites?|nuts?|seeds?|granola|batch|edges?|bottoms?|muffins?|toast|crust|smell|sugar|oats?|coconut) (?:is |are |was |were |got |get |gets |keeps? |a little |kinda |all |just )*(?:burn|burned|burnt|burning|burns|scorched) /g,
  / (?:burn|burned|burnt|burning) (?:the |my |our |another |this |that |a |all the |every |those |these |first |second |whole |half the )*(?:bars?|bites?|muffins?|granola|batch|nuts?|seeds?|pan|bottoms?|edges?|sugar|oats?|toast|cookies|squares|coconut|almonds|butter|crust|rice|garlic|calories for) /g,
  / (?:add|order|buy|get) (?:an? |the |some |more |new )*(?:epi ?pens?|auto ?injectors?) (?:trainers?|cases?|holders?|bags?) | (?:ate|eaten|had|eat) (?:an? |some |the |my )?(?:undercooked|raw|expired|old|spoiled|moldy|rotten|bad) (?=[a-z]+ (?:[a-z]+ )*sick )/g,
  / chest freezers? | kidney beans? | liver (?:pate|sausage|wurst) | bing(?:e|ing) watch\w* | tired of (?!being|feeling|living|life|everything|existing|it|this|all)| bone broth | bones broth /g,
  // Injectors as a fact about somebody, or as stock.
  / (?:with|has|have|carries|carry|carrying|who has|owns?) (?:an? |the |their |his |her |own |two |a prescribed )*(?:epi ?pens?|auto ?injectors?|injectors?) (?=for|on file|and (?:wants|needs a|asks|would)|which|what|can|so what|travels?|in (?:her|his|their) bag|listed|on the roster)/g,
  / (?:how many|expired|expire|expiring|expiration|restock|order|new|spare|extra|check|inventory|do we have|where do we (?:keep|store)|pack|packing|training) (?:[a-z]+ ){0,4}(?:epi ?pens?|auto ?injectors?|injectors?) (?=(?:in stock|in the (?:kit|bag|cabinet)|expire|expiring|expired|for the (?:kit|trip|bus)|on the list|inventory|training|this season) )/g,
  / (?:epi ?pens?|auto ?injectors?|injectors?) (?:[a-z]+ ){0,3}(?:expire\w*|expiring|expiration|expiry|training|refills?|in stock|policy|inventory) /g,
  // Asked of a snack before anybody has it.
  / (?:can|could|may|should) (?:[a-z]+ ){0,5}be (?:safely )?(?:eaten|had|tasted|drunk) by /g,
  // Everyday breath, hands, backs, heads, periods, weights.
  / (?:take a|deep|bad|breath of fresh|hold your|waste of) breath (?!and)| breathing room | (?:breathe|breath) (?:easy|life into) /g,
  / (?:by|on|at|in|second|to|with one|extra|lend a|need a|give a|gimme a|left|first|other|hour|minute|second) hands? (?!is|hurts?|swell|burn|cut|bleed|numb|pain|swollen)| hands? (?:off|over|out|on|mixed|mixer|mixing|blender|wash\w*|sanitizer stations?|rolled|made|full|up|towels?) | on the other hand /g,
  / (?:in|at|from|to|of|out|way|far|the) (?:the )?back (?!hurts?|pain|aches?|is (?:sore|killing|hurting|tight)|injur|spasm|strain)|(?<! came) back (?:in|to|on|into|from|at|of|for|up (?:the|our|to|in|plan|stock|supply|freezer|fridge|batch|stash|bars?|a)|stock|door|fridge|cooler|room|shelf|order|half|then|now|home|at|by|after|before|out|and forth|burner|by|tomorrow|today|next) /g,
  / heads? (?:count|counts|coach|coaches|of|up|to|for|out|in|start|chef|trainer|intern|table|home|over|into|back|on) | per head | \d+ heads? | mouths to feed | \d+ mouths? /g,
  / (?:first|second|third|free|class|rest|holding|time|cooling|grace|this|1st|2nd|3rd|4th|study|trial|chilling|baking|proofing|off|training|exam|competition) periods? | periods? (?:of (?:time|training|rest)|\d) /g,
  / (?:lost|lose|loses|losing) (?:[a-z0-9]+ ){0,2}weight (?:on|in|from|during|after|when|while) (?:the |our |my |these )?(?:apples?|fruit|berries|veg\w*|carrots?|potato\w*|squash|meat|turkey|chicken|beef|bars?|batch|muffins?|dough|bake|baking|oven|cook\w*|peel\w*|trim\w*|drain\w*|dehydrat\w*|roast\w*|pan|thaw\w*) /g,
  / (?:apples?|fruit|berries|veg\w*|carrots?|potato\w*|meat|turkey|chicken|beef|bars?|batch|muffins?|dough|loaf|slab|bags?) (?:[a-z]+ ){0,2}(?:lost|lose|loses|losing) (?:[a-z0-9]+ ){0,3}(?:weight|g|grams|oz|lbs?|water) /g,
  / (?:bars?|bites?|slab|batter|dough|pieces?|mix|mixture|smoothies?|slices?|muffins?|cookies|spread|layer|yogurt|sauce|oats) (?:(?!trying |to |i |im |so |help |for |who |and )[a-z]+ ){0,4}(?:thin|thinner|lean|leaner|lighter|thinning) | (?:thin|thinner|leaner|lighter|thinning) (?:[a-z]+ )?(?:bars?|bites?|slab|batter|slices?|pieces?|layer|spread|cookies|out|sheet) | lean (?:meat|turkey|beef|chicken|protein|ground|ham|pork|on) /g,
  / lose (?:the|our|a|that|this|track|count|any|less|more|its|their) (?!weight|fat|pounds?|few|lot|couple|lbs)| lost (?:the|our|a|that|this|track|count|and found|my (?:list|login|password|phone|recipe|card|sheet)) (?!weight|few|pulse|lot)/g,
  / half the team (?:is )?(?:out|down|gone) (?=with|cut|so|today|this|now|need|\d)/g,
  / cold (?:brew|water|milk|storage|bars?|cuts?|room|oats|holding|hold|chain|food|foods|drinks?|packs?|tub|one|ones|press\w*|smoked|plate) /g,
];

/** The message without its harmless turns of phrase. */
export function withoutIdioms(said: string): string {
  let plain = said;
  for (const idiom of IDIOMS) plain = plain.replace(idiom, ' ; ');
  return plain;
}

/** A habit somebody asks about, with nothing going on now: no emergency, and a question for a clinician. */
export const HABIT =
  / (?:lips?|mouth|tongue|throat) (?:(?:gets?|feels?|goes|is|are|always gets?) (?:a (?:bit|little) |kinda |so |really )?(?:itchy|tingly|scratchy)|itch(?:es)?(?: a (?:bit|little))?|tingles?(?: a (?:bit|little))?) (?:every ?time|everytime|whenever|each time|any ?time) (?!.* (?:now|just|help|swell\w*|swollen|breath\w*|tight\w*|clos\w*|hives|wheez\w*) )| (?:seizure disorder|seizure meds?|seizure medications?|history of seizures) /g;
