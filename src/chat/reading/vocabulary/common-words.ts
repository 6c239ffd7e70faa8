/** Everyday words: known, so never "corrected" into a word of the kitchen, and never part of a recipe's name. */
export const COMMON_WORDS: ReadonlySet<string> = new Set(
  `a about above across actually after afternoon again against ago ahead all allow allowed almost alone along already alright
  also although always am amount amounts an and another answer any anybody anymore anyone anything anyway apart are area aren arent
  around as ask asked asking at ate athletic away awesome baby back bad badly bake baked baking bar base based basic batch batches be
  because become been before begin behind being below beside best better between big bigger biggest bit blend blended blue board body book
  both bother bottom bought bowl boy boys break breakfast bring bringing broke broken brought brown bucks bunch burn burned burnt bus busy but buy
  by cake call called calling came camp campus can cannot cant car card care careful carry case catch cause center certain chance change
  changed changes changing cheap cheaper check checked checking chef chill chilled choice choose class clean cleaned clear close closed
  closing clothes coach cold college color come comes coming common completely container cook cooked cooking cool cooled cooler cooling
  corner correct cost costs could couldnt count counted counter counting course cover covered crew crowd crumb cup cut cuts cutting daily damn
  dark day days dead deal dear deep definitely degree degrees deliver delivered delivery desk did didnt die difference different
  dinner direct dish dishes do does doesnt doing done dont door double doubt dough down dozen drink drive drop dropped dry due during each
  earlier early easy eat eaten eating eats edge either else empty end ended enough entire even evening event ever every everybody
  everyone everything everywhere exact exactly example excellent except excuse expect extra eye face fact fail fall family far fast
  fat favorite feed feeding feel feeling feels felt few figure fill filled final finally find fine finish finished fire first fit five fix flat
  flavor floor flour folks food foods for forget forgot form fresh friend friends from front frozen full fun funny game games gave
  get gets getting give given gives giving glad go goes going gone gonna good got gotta grab great green grind ground group guess guy
  had half hall hand handed hands happen happened happening happens happy hard has hasnt hate have havent having he head heat heavy heck hello hell
  help helps her here hers hes hey hi high higher him himself his hit hold holding holds home honest hope hot hour house how huge hungry
  hurry i id idea ideas if ill im in inside instead intern interns into is isnt it item items its itself ive job join just keep keeping keeps
  kept key kick kid kind kinda kitchen knew know known label labels large last late later latest lay lead learn least leave leaves left less
  let lets level lid lift lifting light lighter like liked likely line list listed little live load local log logged logging long longer look
  looking looks lose lost lot lots love low lower lunch machine made main make makes making man manager many mark match matter max may maybe
  me meal meals mean means meant measure measuring meet member men mess message middle might mind mine minus minute miss missed missing mix
  mixed mixer mixing mixture moment money month more morning most mouth move moved moves moving much must my myself name near nearly need
  needed needs neither never new news next nice night no nobody none noon normal not note nothing now number of off office often oh ok okay old on
  once one ones only onto oops oops open opened opening or order ordered ordering orders other others our ours out outside oven over own
  pack packed packing packs page paid pan pans paper part parts party past pay people per percent perfect person phone pick picked piece
  place plain plan planned planning plastic plate play played playing please pls plus plz point portion possible post power practice prefer prep
  prepped prepping press pretty print probably problem project promise proper pull pulled pulling push put puts putting question quick quickly
  quiet quite ran rather raw reach read reading ready real really reason recent record red regular remain remaining remember rest
  result return right roll room round run running runs safe said salty same saw say saying says school season second see seem seems seen send
  sent serious serve served serves serving set setting several shake shape share she sheet shelf shift short should shouldnt show showed shows shut sick
  side sign similar simple since single sit site sits sitting size skip slab slice small smaller smell smells snack snacks so soft some somebody somehow someone
  something sometimes somewhere soon sorry sort sound speak spend spot staff stand standing start started starts stay stick sticky still
  stop stopped store stored storing straight strange stuff such suggest supply supposed sure switch tailgate tailgating table take taken takes taking talk
  tall taste tastes team teams tell temp test than thank thanks that thats the their them then there theres these they theyre thick thin thing things think
  this those though thought through throw thrown thumb tight time times tiny tired to together told tomorrow tonight too took top toss tossed
  total touch towards track train training trash travel tray trays tried trip trouble true truth try trying turn turned turning two type typed under
  understand until up upon us use used uses using usual usually van very vs wait waiting walk wall want wanted wants warm was wash wasnt waste
  wasted watch water way we wed week weekend weeks weigh weighs weight weird well went were werent wet what whatever whats when whenever where
  which while white who whole whose why will win wish with within without woke women wont wonder word work worked working works world worry
  worse worst worth would wouldnt wrap wrapped wrapping write wrong yeah year yep yes yesterday yet yo you young your yours yourself yum yummy
  dude bro bruh lol omg wtf idk btw asap tho tbh sup nah nope wanna gimme lemme dunno kinda gotcha hmm uh um ugh r u ur wat wut n w b4 thx ty
  fuck fucking shit shitty crap crappy hell bloody ass freaking sir maam miss mister mr mrs shes hes theyre youre weve were id ill theyve
  quiero sky nice asdf qwer hwo teh adn bus mess bench side school nothing cheers afternoon evening gotten stuck slab slabs scale scaled
  double leftover leftovers crunchy sweet sweeter salty chewy moist stiff runny loose melted hardened soggy bland bitter sour rock
  coach captain director trainer physio manager boss supplier vendor store truck station table visitors officials refs
  daughter son mom dad sister brother roommate partner family friend doctor physician nurse hospital clinic
  ship short shortage shorted sub subbed subs per roster rosters travel traveling travelling trip trips
  bigger smaller thicker thinner lighter heavier higher lower fewer larger cheaper quicker faster homemade regular plain mini jumbo big
  morning session sessions workout workouts race races meet meets tournament tournaments scrimmage scrimmages
  cranked whipped knocked banged churned threw grabbed snagged scarfed devoured inhaled polished housed hooked loaded hauled
  connect connects connected connection internet wifi password login email website link pitch puck whistle anthem lineup inning innings halves heats
  certificate certification certified document policy rule rules regulation committee compliance
  lieu spread spreads absolutely basically literally honestly maybe perhaps somewhat fairly rough roughly approximately about
  yesterday weekday midweek whenever meanwhile afterwards afterward beforehand ahead prior upcoming previous
  explain describe suggest recommend recommended advice tip tips hint option options choice choices pick picks favorite favorites
  starving famished hungry thirsty full craving cravings appetite tasty delicious gross yucky
  weird strange funny odd random crazy wild insane nuts super mega ultra
  bosses trainers players coaches athletes visitors parents kids guests recruits alumni officials
  winner winning won beat score scored scores history chess poem joke song movie story music weather president capital
  sorry thank cheers awesome amazing perfect excellent terrible awful horrible
  anybody whoever whichever wherever however whether although unless until while
  write wrote written sing dance translate solve homework exam essay class classes
  visit visits visited visiting visitor host hosts hosting hosted arrive arrives arriving arrived attend attending attended
  join joins joined joining invite invited welcome leaving compete competing recruit recruits freshman freshmen sophomore
  sophomores senior seniors junior juniors weekly monthly breakdown transfer transfers reception banquet picnic squad squads
  ride rides hike runs bike sprint sprints marathon triathlon conditioning halftime kickoff tipoff warmup cooldown`
    .split(/\s+/)
    .filter((word) => word !== ''),
);
