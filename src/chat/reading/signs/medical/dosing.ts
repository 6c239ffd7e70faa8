import { near } from '../near.ts';
import { DOSED } from '../words.ts';

export const DOSING: readonly RegExp[] = [
  new RegExp(` how many (?:mg|milligrams|grams|g|pills|tablets|scoops) (?:of )?${DOSED} `),
  / should (?:i|he|she|we|they|athletes) (?:be )?(?:take|taking|start) (?:an? |some |my )?(?:iron|zinc|magnesium|calcium|vitamin [a-z0-9]+|salt|caffeine|melatonin) (?:pills?|tablets?|supplements?) /,
  new RegExp(
    ` ${DOSED} (?:and )?how (?:much|many|often) (?:$|should|do i|can i|to take|a day|per day|daily|is (?:ok|safe|right))`,
  ),
  / (?:should|do|must|can|could|may) (?:i|he|she|we|they|athletes|my [a-z]+) (?:just |also |be |keep |stop |start |double |skip |quit |have to |need to |up )*(?:take |taking |taking my |on |start |need |my |the )*(?:iron|zinc|calcium|magnesium|potassium|vitamins?(?: [a-z0-9]+)?|b12|folate|an? multivitamin|multivitamins?|(?:iron |vitamin |salt |zinc )?(?:pills?|tablets?)) (?!bars?|bites?|in (?:the|a|this)|per|powder|content)/,
  / (?:double|stop|skip|quit|miss|missed|forgot|run out of|ran out of|increase|lower|up) (?:taking )?(?:my|his|her|their) (?:[a-z]+ )?(?:pills?|meds?|medications?|medicine|tablets?|inhaler|insulin|iron) /,
  new RegExp(
    ` how (?:much|many) (?:[a-z]+ )?${DOSED} (?:for|at|if i weigh|when i weigh|i weigh|if im) (?:an? |my )?(?:\\d|weight|body|kilo|pound|kg|lb|me |my|someone|athlete|him|her|girl|guy)`,
  ),
  / (?:birth control|contracepti\w*|iud|the pill|plan b) /,
  / (?:ibuprofen|advil|motrin|tylenol|acetaminophen|paracetamol|aspirin|naproxen|aleve|antibiotics?|antidepress\w*|ssri|prozac|zoloft|lexapro|adderall|vyvanse|ritalin|concerta|accutane|isotretinoin|prednis\w*|cortisone|steroids?|painkillers?|warfarin|blood thinners?|statins?|metformin|albuterol|inhaler|allergy (?:pills?|meds?)|antihistamin\w*|benadryl|claritin|zyrtec|medications?|medicines?|meds|prescri\w*|muscle relax\w*|sleeping pills?|opioids?|codeine|amoxicillin|doxycycline|levothyroxine|lithium|pepto|imodium|antacids?|omeprazole) /,
  new RegExp(
    ` (?:how much|how many|how often|what amount|what dose|whats the dose|mg of|grams of|when should i|how long should i|what time should i) (?:[a-z]+ ){0,4}${DOSED} (?:[a-z]+ ){0,2}(?:should|do|can|to|must|i|we|per|a|for|daily|every|take|is (?:safe|right|good)|does an?) (?!limit|have|contain|legal|banned)`,
  ),
  new RegExp(
    ` (?:how much|how many|how often|when) (?:should|do|can|must|to|does) (?:[a-z]+ ){0,3}(?:take|use|load|dose) (?:[a-z]+ ){0,3}${DOSED} `,
  ),
  new RegExp(` (?:take|taking) (?:[a-z]+ ){0,3}\\d+ ?(?:mg|g|grams|mcg|iu|pills?|scoops?) (?:of )?${DOSED} `),
  new RegExp(
    ` \\d+ ?(?:mg|g|grams|mcg|iu) (?:of )?${DOSED} (?:[a-z]+ ){0,3}(?:ok|okay|safe|right|good|best|enough|too much|a day|per day|daily|before|too) `,
  ),
  / (?:dose|doses|dosage|dosages|dosing|loading phase|creatine loading) /,
  / (?:doctors?|doc|physician|dr|nurse|pcp|specialist|surgeon|physio|pt) (?:[a-z]+ ){0,3}(?:gave|said|says|told|prescribed|put|wants|thinks|diagnosed|found|recommended|ordered) /,
  / what (?:should|can|could|do|would|must|to) (?:i |he |she |we |they |you |u |my [a-z]+ )?(?:take|give|use) (?:[a-z]+ )?(?:for|to help|when|against|with) (?:[a-z]+ ){0,2}(?:it|this|pain|pains|cramp\w*|headaches?|cold|fever|flu|cough|soreness|inflammation|allerg\w*|sleep|swelling|sore|injur\w*|stomach|nausea|period|anxiety|migraine|knee|ankle|back|hamstring|shoulder|muscle|recovery|heartburn|him|her) /,
  / (?:i|he|she|im|hes|shes|athlete|who|kid|we) (?:[a-z]+ )?(?:take|takes|taking|am on|is on|on|started|start|was prescribed|got prescribed) (?:[a-z0-9]+ ){0,4}(?:meds|medication|medications|medicine|pills|antibiotics|prescription|blood thinners?|statins?|beta blockers?|antidepressants?|adhd|an? ssri|warfarin|coumadin|eliquis|lisinopril|prednisone) /,
  / (?:meds|medication|medicine|antibiotic\w*|prescription|pills?|drug) (?:[a-z]+ ){0,4}(?:with|interact\w*|and|before|after|on an empty) (?:[a-z]+ ){0,3}(?:food|grapefruit|dairy|milk|caffeine|bars?|eat\w*|meal|stomach|practice|supplements?|creatine) | interact\w* with (?:[a-z]+ ){0,3}(?:meds?|medication\w*|prescription|pills?) /,
  near(
    'too much|overdo|overdoing|max|maximum|safe amount|how much|how many|how many mg|how many grams|dose|stack\\w*',
    `${DOSED} (?:a day|per day|daily|each day|safe|safely|should i|can i|for me|to take|for a \\d+|before (?:a )?(?:game|lift|practice|match|race|bed))`,
    5,
  ),
];
