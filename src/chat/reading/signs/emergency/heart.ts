import { both, near } from '../near.ts';

export const HEART: readonly RegExp[] = [
  / (?:cpr|defibrillator|cardiac arrest|heart attack|heart stopped) /,
  / (?:where|wheres|need|get|grab|find|bring|use) (?:[a-z]+ ){0,3}aed | aed (?:now|please|location|where) /,
  / chest (?:[a-z]+ ){0,3}(?:pains?|hurts?|hurting|tight\w*|pressure|crushing)| (?:pain|pains|tightness|pressure|hurts|crushing) (?:[a-z]+ ){0,3}chest /,
  near('chest', 'pains?|hurts?|hurting|tight\\w*|pressure|crushing|heavy|squeez\\w*|burning|stabbing', 4),
  near('chest', 'elephant|weird|funny|strange|heavy|fluttering|a weight|about to explode', 5),
  both(
    '(?:jaw|arm|shoulder|back|chest) (?:and (?:jaw|arm|shoulder|back) )?(?:hurts?|hurting|pain|aching|aches)|pain in (?:his|her|my) (?:jaw|arm|chest)',
    'pale|sweat\\w*|clammy|short of breath|grey|gray',
  ),
  near('left arm|arm', 'numb|tingl\\w*|chest|cant feel', 4),
  / (?:grabb\w*|clutch\w*|holding|gripping) (?:at )?(?:his|her|my|their) (?:chest|heart|throat|neck) /,
  / heart (?:isnt|is not|not|stopped) beating /,
  / heart (?:[a-z]+ ){0,3}(?:stopped|stopping|attack) /,
];
