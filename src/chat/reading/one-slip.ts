/**
 * Whether a word is another with one letter wrong, missing, too many, or with two neighbours in the wrong order.
 * @example isOneSlip('chery', 'cherry') // true
 */
export function isOneSlip(typed: string, meant: string): boolean {
  if (typed === meant || Math.abs(typed.length - meant.length) > 1) return false;
  let same = 0;
  while (same < typed.length && typed[same] === meant[same]) same++;
  const rest = (word: string, from: number) => word.slice(same + from);
  return (
    rest(typed, 1) === rest(meant, 1) ||
    rest(typed, 1) === rest(meant, 0) ||
    rest(typed, 0) === rest(meant, 1) ||
    (typed[same] === meant[same + 1] && typed[same + 1] === meant[same] && rest(typed, 2) === rest(meant, 2))
  );
}
