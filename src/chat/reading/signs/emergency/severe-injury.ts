import { near } from '../near.ts';

export const SEVERE_INJURY: readonly RegExp[] = [
  / (?:electric shock|electrocut\w*|shocked by|got shocked|drown\w*) /,
  / (?:severe|bad|third degree|burned|burnt) (?:[a-z]+ ){0,3}(?:burns?|face|arm|hand|leg|hands|arms) (?:[a-z]+ ){0,4}(?:bad|badly|oil|water|steam|skin|blister\w*|hospital) /,
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
  / (?:neck|spine|back) (?:[a-z]+ ){0,5}(?:cant|cannot) (?:move|feel) | (?:hand|finger|fingers|arm|hair) (?:[a-z]+ ){0,3}(?:caught|stuck) in (?:the )?(?:mixer|slicer|grinder|blender|machine|door|processor) /,
  / (?:someone|somebody|player|athlete|kid|he|she|friend|intern|teammate) (?:is |got |has |was |just |been )*(?:badly |really |seriously |severely )(?:hurt|injured|burned|burnt|wounded) | (?:hurt|injured) (?:really |so |pretty )?(?:badly|bad|seriously) /,
];
