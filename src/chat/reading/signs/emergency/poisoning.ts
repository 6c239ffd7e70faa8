import { both, near } from '../near.ts';
import { CHEMICAL } from '../words.ts';

export const POISONING: readonly RegExp[] = [
  / (?:took|swallowed|ate|downed|popped|taken) (?:[a-z]+ ){0,3}(?:\d\d+|twenty|thirty|forty|fifty|dozen|whole) (?:[a-z]+ ){0,2}(?:pills?|tablets?|capsules?|advil|tylenol|ibuprofen|aspirin|benadryl|melatonin|xanax|adderall|caffeine|meds) /,
  / (?:overdos\w*|od|oded|ods) /,
  / (?:took|swallowed|ate|taken|downed|popped) (?:[a-z0-9]+ ){0,4}(?:bottle|handful|pack|box|bunch|lot|all|too many) (?:[a-z]+ ){0,3}(?:pills?|tablets?|meds?|medicine|medication|caffeine|advil|tylenol|melatonin|gummies) /,
  / found (?:him|her|them|my [a-z]+|someone) (?:[a-z]+ ){0,4}(?:pills?|bottle|needle|hanging|blue|cold|unconscious|passed out) | empty pill bottle| pills? (?:next to|beside|all around) (?:him|her|them) /,
  / (?:swallow(?:ed|s|ing)?|ingest(?:ed|s|ing)?) (?:an? |the |his |her |some |something|my )(?!bar|bite|sip|gulp|pill|vitamin|multivitamin|cost|price|loss)/,
  / poisonous (?:mushroom|berr|plant|thing|snake)|something poisonous | (?:wild|unknown|field|yard) (?:mushrooms?|berries|plants?) .*(?:ate|eaten|sick|vomit\w*|throwing) | (?:ate|eaten) .*(?:mushrooms?|berries|plants?) (?:from|in|by) (?:the |a )?(?:field|woods|yard|forest|park) /,
  / took (?:all|every one|most) (?:of )?(?:my|his|her|the|their) (?:[a-z]+ ){0,2}(?:pills?|meds?|medications?|medicine|tablets?|antidepressants?|tylenol|advil|ibuprofen|adderall|xanax) | (?:mixed|mixing|combined|with) (?:[a-z]+ )?(?:alcohol|vodka|beer|drinks?|booze) (?:and|with) (?:[a-z]+ )?(?:pills?|xanax|meds|medications?|adderall|sleeping) | (?:pills?|xanax|meds) (?:and|with) (?:alcohol|vodka|booze|beer) | (?:bunch|handful|bottle|whole pack|lot) of (?:adderall|xanax|tylenol|advil|ibuprofen|benadryl|caffeine|ritalin|vyvanse|molly|percocet|edibles) /,
  / (?<!running on |on )fumes | (?:drank|swallowed|tasted|sipped|ate|drinks|drinking) (?:it|some|that|the smoothie|the shake) .*(?:bleach|sanitiz\w*|degreaser|detergent|chemicals?|cleaner) | (?:bleach|sanitiz\w*|degreaser|detergent|chemicals?|cleaner|poison) .*(?:drank|swallowed|drunk|tasted|ate|sipped) /,
  both(
    'drank|drunk|sipped|swallowed|chugged|tasted|gulped',
    'bleach|sanitiz\\w*|degreaser|detergent|cleaner|chemicals?|ammonia|lye|windex|antifreeze|poison',
  ),
  / too many (?:[a-z]+ ){0,2}(?:pills?|tablets?|gummies) /,
  / (?:poison|poisoned|poison control) (?!ivy)/,
  / (?:drank|swallowed|drunk|ingested|ate|drink|sprayed) (?:[a-z]+ ){0,4}(?:bleach|clean\w+|sanit\w+|degreaser|detergent|chemical\w*|lye|ammonia|soap|hand sanitizer|fluid|antifreeze|batteries|battery|glass|metal) /,
  / (?:bleach|chemical\w*|sanit\w+|cleaner|degreaser|oil) (?:[a-z]+ ){0,3}(?:in|into|got in) (?:[a-z]+ )?eyes? /,
  near(
    'drank|drink|drunk|drinking|swallow\\w*|ate|eaten|ingest\\w*|inhal\\w*|breathed|sprayed|splash\\w*',
    CHEMICAL,
    4,
  ),
  near(CHEMICAL, '(?:my|his|her|their) (?:eye|eyes|mouth|face|drink|bottle)', 4),
  / mix(?:ed|ing)? (?:[a-z]+ ){0,2}(?:bleach|ammonia) (?:and|with|plus) | (?:bleach|ammonia|chemical|chlorine) (?:fumes|gas) /,
  / (?:took|swallowed|ate|downed|popped|taken|had) (?:[a-z]+ ){0,3}(?:[5-9]|[1-9]\d+|five|six|seven|eight|nine|ten|fifteen|twenty|thirty) (?:[a-z]+ ){0,2}(?:pills?|tablets?|capsules?|advils?|tylenols?|ibuprofens?|aspirins?|benadryls?|melatonins?|meds|gummies|edibles) /,
  / (?:took|taken|swallowed|had) (?:[a-z]+ ){0,3}(?:whole|entire|full) (?:[a-z]+ ){0,2}(?:bottle|pack|box|strip) | too many (?:[a-z]+ ){0,3}(?:pills?|tablets?|meds|edibles|caffeine) | alcohol poisoning /,
];
