import { near } from '../near.ts';

export const LOW_ENERGY: readonly RegExp[] = [
  / (?:skipped|skipping|skip) (?:[a-z]+ ){0,3}(?:breakfast|lunch|dinner|meals?) (?!line|prep|bars?)(?!.* (?:practice|lift|game|match|eat|snack|fuel|hungry) )/,
  / (?:period|periods|menstr\w*|menses|amenorr\w*|time of the month) (?!of|drink)/,
  / (?:red s|reds|relative energy deficiency|low energy availability|underfuel\w*|under fuel\w*|female athlete triad|triad) /,
  / (?:always|constantly|so|really|super|been|all the time|feel|feeling|very|chronic\w*|im|extremely) (?:[a-z]+ ){0,2}(?:tired|exhausted|fatigued?|fatigue|weak|cold|run down|drained) (?!water|brew|milk|storage|out|drink|bars?|food)/,
  / (?:dizzy|dizziness|light ?headed|lightheaded\w*|woozy|vertigo|seeing (?:spots|stars)|shaky|blurry vision|double vision) /,
  near('hair', 'falling|falls|fall|fell|losing|loss|lost|thinning|shedding|clumps?|coming out|brittle', 3),
  / (?:missed|missing|miss|late|lost|no|irregular|stopped|skipped|havent had|hasnt had|didnt get|not getting|without|delayed) (?:[a-z]+ ){0,3}(?:periods?|cycle|menstru\w*) (?!of)| (?:periods?|cycle) (?:[a-z]+ ){0,3}(?:stopped|late|missing|irregular|gone|skipped|weird|hasnt|havent|disappeared|not coming|never came|didnt come) | pms | period cramps /,
  / (?:dizzy|dizziness|lightheaded|light headed|woozy|shaky|faint|weak) (?:[a-z]+ ){0,3}(?:when|after|at|during|all|since|lately|standing|and|every|in) | (?:get|gets|getting|got|feel|feels|feeling|felt|im|am|been|is|so|really|hes|shes|keeps? getting) (?:[a-z]+ ){0,2}(?:dizzy|woozy|lightheaded|light headed|shaky) /,
  / (?:always|constantly|so|all the time|chronic\w*|no|zero|low on|lack of|lacking) (?:energy|fatigue) (?!bars?|bites?|balls?|drinks?|gels?|snacks?)| (?:tired|exhausted|fatigued|drained|run down|worn out|sluggish|burned out|burnt out) (?:[a-z]+ ){0,2}(?:all|always|lately|every|constantly|no matter|for weeks|this week|these days|even|and (?:dizzy|cold|weak)) /,
  / brittle (?:nails|bones) | always (?:[a-z]+ )?(?:cold|freezing) (?!brew)| cold all the time | (?:low|lost|no) (?:libido|sex drive) | over ?train(?:ed|ing) | relative energy | energy deficien\w* | not recovering | resting heart rate /,
];
