import { near } from '../near.ts';

export const STROKE: readonly RegExp[] = [
  / (?:face|mouth) droop\w* | slurr\w* (?:speech|words|his|her)|(?:speech|words) (?:is |are )?slurr\w* | (?:having|had|has) a stroke /,
  near('face|mouth|smile|one side', 'droop\\w*|dropping|sagging|numb|uneven|wont move', 4),
  / (?:cant|cannot) (?:lift|raise|move|feel) (?:[a-z]+ ){0,2}(?:arm|side|leg|face) /,
];
