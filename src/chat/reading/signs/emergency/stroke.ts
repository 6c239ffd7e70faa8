import { near } from '../near.ts';

export const STROKE: readonly RegExp[] = [
  / (?:face|mouth) droop\w* | slurr\w* (?:speech|words|his|her)|(?:speech|words) (?:is |are )?slurr\w* | (?:having|had|has) a stroke /,
  / stroke (?:symptoms?|signs?|protocol) | (?:signs?|symptoms?) of (?:a |an )?stroke | (?:possible|maybe|think|thinks|like|be) (?:[a-z]+ ){0,3}(?:a )?stroke $/,
  / (?:words?|speech|talking|sentences?) (?:[a-z]+ ){0,3}(?:jumbled|garbled|gibberish|mixed up|not coming out|nonsense|wont come out) | talking gibberish /,
  near('face|mouth|smile|one side', 'droop\\w*|dropping|sagging|numb|uneven|wont move', 4),
  / (?:cant|cannot) (?:lift|raise|move|feel) (?:[a-z]+ ){0,2}(?:arm|side|leg|face) /,
];
