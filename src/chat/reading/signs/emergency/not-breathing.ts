import { near } from '../near.ts';

export const NOT_BREATHING: readonly RegExp[] = [
  / (?:cant|cannot|can not|couldnt|couldn|not|isnt|hardly|barely|stopped|unable to|no puede|cnt|difficulty|difficult|hard time|struggl\w+|troubles?|problems?|hard|short(?:ness)? of|out of|labored|fast|heavy|gasping for|trying to|wont|arent|doesnt|quit|having trouble|no) (?:[a-z]+ ){0,2}(?:breath\w*|breathe|respirar) /,
  / (?:breathing|breath) (?:[a-z]+ ){0,3}(?:stopped|hard|difficult|trouble|weird|funny|shallow|problem|problems|heavy|fast|labored|noisy|bad) /,
  / (?:cant|cannot|cnt|couldnt|hardly|barely|trying to|unable to|struggl\w+ to|not) (?:get|getting|catch|take|find) (?:[a-z]+ ){0,2}(?:air|breath|oxygen) /,
  / (?:gasping|wheez\w*) /,
  near(
    'inhalers?',
    'needs?|wheres|where|no|cant find|isnt working|not working|isnt helping|not helping|empty|ran out|lost|forgot|left (?:his|her|my)|used',
    3,
  ),
  / asthma attack | (?:where|need|get|no) (?:[a-z]+ ){0,3}inhaler /,
  / (?:turn\w*|going|gone|went|looks?|lips|face|fingers|skin|hes|shes|(?:he|she|kid|player|athlete|guy|girl) is) (?:[a-z]+ ){0,2}(?:blue|purple|grey|gray) /,
  / (?:no puede|no puedo) respirar | se esta ahogando | me ahogo | ayuda emergencia | reaccion alergica /,
  near(
    'cant|cannot|couldnt|cnt|not|isnt|hardly|barely|unable|trouble|struggl\\w*|difficulty|difficult|hard|harder|problems?|short|shortness|stopped|stops|stopping|quit|wont|no|labored|gasp\\w*|fighting|trying|weird|weirdly|shallow|rapid|noisy|funny|tough|strange|raspy',
    'breath|breathe|breathes|breathing|breathin|breaths',
    3,
  ),
  / (?:cant|cannot|cnt|couldnt|not getting|isnt getting|no|losing|trouble getting|hard to get|struggling for|gasping for|needs?) (?:[a-z]+ ){0,2}(?:air|oxygen) (?!fryer|tight|conditioning|fry|fried)/,
  / (?:turn\w*|going|gone|went|looks?|looking|lips|face|fingers|fingernails|skin|hes|shes|nails) (?:[a-z]+ ){0,3}(?:blue|bluish|purple|grey|gray) (?!and white|and gold|team|jersey|bars?|bites?|shirts?)/,
];
