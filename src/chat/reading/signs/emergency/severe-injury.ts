import { near } from '../near.ts';

export const SEVERE_INJURY: readonly RegExp[] = [
  / (?:electric shock|electrocut\w*|shocked by|got shocked|drown\w*) /,
  / (?:severe|bad|third degree|burned|burnt) (?:[a-z]+ ){0,3}(?:burns?|face|arm|hand|leg|hands|arms) (?:[a-z]+ ){0,4}(?:bad|badly|oil|water|steam|skin|blister\w*|hospital) /,
  / (?:chopped|lopped|cut|sliced|took|ripped) (?:off )?(?:[a-z]+ ){0,2}(?:tip of |part of )(?:my|his|her|a|the) | (?:chopped|lopped|severed|amputated) (?:off )?(?:my |his |her |a |the |their )?(?:finger\w*|thumbs?|hand|toes?) /,
  / (?:knife|blade|skewer|mandoline|slicer|peeler|scissors) (?:[a-z]+ ){0,3}(?:went |through |into |in )+(?:my|his|her|their) | impaled | tourniquet /,
  near(
    'hot oil|boiling|grease|fryer oil|scalding|hot water|hot syrup|hot caramel|steam',
    '(?:on|over|onto|all over|down|burned|scalded|hit|got) (?:my|his|her|their|the intern\\w*) (?:[a-z]+ )?(?:face|arms?|hands?|legs?|feet|foot|neck|chest|eyes?|skin|back|lap)|spilled on (?:him|her|me|them)',
    5,
  ),
  near('crushed|crushing|mangled|degloved', '(?:arm|hand|fingers?|foot|leg|toes?|ribs|skull)', 3),
  / (?:broke|broken|snapped|broke his|fractured) (?:his|her|my|their|a) (?:neck|back|spine|skull) |(?:neck|skull|spine) (?:is |looks |might be |may be )?(?:broken|fractured|snapped) /,
  / lost (?:part of |the tip of |a |an |his |her |my |the )+(?:finger|thumb|toe|fingertip|hand|arm|ear|eye) (?!food|count)| (?:severe|serious|third degree|nasty|major|terrible) burns? (?!on the (?:bars|pan|bottom|crust))/,
  / (?:neck|spine|spinal|head) injur\w* | (?:cant|cannot) (?:move|feel) (?:[a-z]+ ){0,2}(?:legs?|arms?|feet|hands?|body|face|side) /,
  near(
    'burn\\w*|scald\\w*',
    '(?:bad|badly|severe\\w*|third degree|second degree|boiling|hot oil|grease|fryer|blister\\w*|skin|charred|bubbl\\w*|whole|all over)(?: [a-z]+){0,4} (?:face|arms?|hands?|legs?|feet|neck|chest|skin|fingers?|off|him|her|me|myself|himself|herself|burn\\w*)',
    5,
  ),
  near(
    '(?:face|arms?|hands?|legs?|feet|neck|chest|skin|fingers?)',
    '(?:burn\\w*|scald\\w*)(?: [a-z]+){0,4} (?:bad|badly|severe\\w*|blister\\w*|skin|peeling|oil|boiling|degree|white|black)',
    4,
  ),
  / (?:skin|flesh) (?:[a-z]+ ){0,2}(?:peeling|melted|melting|burned|burnt|blistering|coming off) | (?:third|second) degree burns? | chemical burns? | bone (?:[a-z]+ ){0,3}(?:sticking|through|showing|out) | compound fracture /,
  / (?:neck|spine|back) (?:[a-z]+ ){0,5}(?:cant|cannot) (?:move|feel) | (?:hand|finger|fingers|arm|hair) (?:[a-z]+ ){0,3}(?:caught|stuck|trapped|pinned) in (?:the )?(?:dough |meat )?(?:sheeter|press|mixer|slicer|grinder|blender|machine|door|processor) /,
  / (?:someone|somebody|player|athlete|kid|he|she|friend|intern|teammate) (?:is |got |has |was |just |been )*(?:badly |really |seriously |severely )(?:hurt|injured|burned|burnt|wounded) | (?:hurt|injured) (?:really |so |pretty )?(?:badly|bad|seriously) /,
];
