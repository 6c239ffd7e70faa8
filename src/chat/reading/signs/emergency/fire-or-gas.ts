import { near } from '../near.ts';

export const FIRE_OR_GAS: readonly RegExp[] = [
  / (?:gas leak|smell(?:s|ing)? gas|carbon monoxide|(?:kitchen|oven|grease|pan|fryer|stove|building) (?:is |is on |on )?fire|on fire|fire in)/,
  near(
    'fire|flames?',
    'kitchen|oven|stove|grease|pan|fryer|building|towel|apron|microwave|toaster|room|house|help|put (?:it )?out|putting out|extinguisher|caught|catch|catches|catching|started|hair|sleeve|shirt|glove|theres|there is|on|burning',
    3,
  ),
  /^ (?:fire|flames) (?:fire |help |now |omg |quick )*$| smoke (?:[a-z]+ ){0,3}(?:everywhere|filling|pouring|coming (?:from|out)|kitchen|all over) | fire (?:alarm|department|extinguisher|dept|truck) /,
  / (?:towels?|aprons?|paper|mitts?|cardboard|trash|curtains?|cord|outlet|wires?|wiring|stove|fryer|microwave|toaster|hair|sleeve|clothes|shirt) (?:is |are |was |just )?(?:burning|on fire|smoking|in flames|sparking) /,
  / flames? (?:are |is )?(?:coming|shooting|from|out|everywhere|in|on|all over) | gas (?:stove |burner |burners |oven |range )?(?:was |is |got )?left on (?!in the (?:van|car|bus|truck))/,
  / (?:smell\w*|leak\w*|odor of|hear|reek\w*) (?:[a-z]+ ){0,3}gas (?!station|grill)| gas (?:[a-z]+ ){0,3}(?:leak\w*|smell\w*|hissing|odor) | (?:co|carbon monoxide) (?:alarm|detector|leak|poisoning) /,
];
