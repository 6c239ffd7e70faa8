import { near } from '../near.ts';
import { BODY, BODY_SURE, HURTS } from '../words.ts';

export const INJURY: readonly RegExp[] = [
  / (?:stress fractures?|fracture\w*|broken (?:bone|arm|leg|foot|toe|finger|wrist|hand|rib|nose|collarbone)|broke (?:my|his|her) |bone (?:density|scan|injury|stress)) /,
  / (?:ruptur\w*|sprain\w*|(?:pulled|torn|tore|strained) (?:a |my |his |her )?muscles?|dislocat\w*|tendin\w*|tendon\w*|acl|mcl|meniscus|hamstring|rotator|labrum|shin splints|plantar) (?!pork|apart|chicken|the|out|from|\d)/,
  / (?:injur\w*|post op|surgery|surgeries|stitches|cast|crutches) /,
  new RegExp(
    ` ${BODY} (?:[a-z]+ ){0,3}(?:hurts?|hurting|pain|pains|aches?|aching|sore|swollen|swelling|killing|cramp\\w*|injur\\w*|upset|problems?|issues?|bothering|burns|feels) `,
  ),
  new RegExp(
    ` (?:hurts?|pain|pains|sore|aching|swollen|twisted|rolled|hurt|injured|bruised|jammed|cramp\\w*) (?:in |my |his |her |your |the |on |a )*${BODY} `,
  ),
  / (?:concuss\w*|hit (?:my|his|her|their) head|head injury|bumped (?:my|his|her) head) /,
  / (?:sports hernia|hernia|wound|stitch|healing|heal) (?:faster|from|my|what|after|up|quicker|$)/,
  near(HURTS, BODY_SURE, 4),
  near(HURTS, `(?:my|his|her|their|your) (?:[a-z]+ )?${BODY}`, 3),
  near(
    'burn|burns|burned|burnt|burning|scald\\w*|cut|cuts|sliced|nicked|smash\\w*|slam\\w*|pinched|scrape\\w*|puncture\\w*|splinter',
    `(?:(?:my|his|her|their|your|a) (?:[a-z]+ )?(?:${BODY}|palm|fingertip|face|skin|lip)|fingers?|thumb|wrist|palm|fingertip)`,
    4,
  ),
  / (?:burned|burnt|burn|scalded|cut|hurt|sliced|injured|nicked) (?:my|him|her|your) ?sel\w+ /,
  / (?:hamstring|acl|mcl|ucl|meniscus|labrum|rotator cuff|achilles|groin|ankle|oblique|it band|shin splints|tendonitis|tendinitis|plantar fasciitis|stress reaction|turf toe|bone bruise|pulled muscle|muscle (?:strain|tear|pull|spasm)|black eye|nose ?bleeds?|bloody nose|road rash|whiplash|rehab(?:bing)? (?:my|from|his|her|an?)|physical therapy|bone broth for healing|heal(?:ing)? (?:faster|quicker|quickly)|return to play) /,
  / (?:hit|hits|bumped|banged|smacked|knocked|bonked|got hit in|ball to|took a ball to|elbow to|blow to) (?:[a-z]+ ){0,3}(?:his|her|my|the|their|in the) head | hit head | (?:concuss\w*|concusion|head (?:injury|knock|trauma)) | seeing stars /,
];
