import { near } from '../near.ts';

export const HEART: readonly RegExp[] = [
  / (?:cpr|defibrillator|cardiac arrest|heart attack|heart stopped) /,
  / (?:where|wheres|need|get|grab|find|bring|use) (?:[a-z]+ ){0,3}aed | aed (?:now|please|location|where) /,
  / chest (?:[a-z]+ ){0,3}(?:pains?|hurts?|hurting|tight\w*|pressure|crushing)| (?:pain|pains|tightness|pressure|hurts|crushing) (?:[a-z]+ ){0,3}chest /,
  near('chest', 'pains?|hurts?|hurting|tight\\w*|pressure|crushing|heavy|squeez\\w*|burning|stabbing', 4),
  near('left arm|arm', 'numb|tingl\\w*|chest|cant feel', 4),
  / (?:grabb\w*|clutch\w*|holding|gripping) (?:at )?(?:his|her|my|their) (?:chest|heart) /,
  / heart (?:[a-z]+ ){0,3}(?:stopped|stopping|attack) /,
];
