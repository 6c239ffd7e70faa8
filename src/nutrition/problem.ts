/** Every way a request can fail that a person can mend; closed so that callers match on a code, never on text. */
export type ProblemCode =
  | 'empty_request'
  | 'too_long'
  | 'not_understood'
  | 'bad_quantity'
  | 'unknown_unit'
  | 'unknown_food'
  | 'unknown_recipe'
  | 'no_portion'
  | 'ambiguous'
  | 'needs_more'
  | 'not_allowed'
  | 'not_possible'
  | 'not_found'
  | 'bad_file'
  | 'bad_option'
  | 'unavailable'
  | 'internal';

/**
 * The one kind of failure in this program: what is wrong, in the person's words, and what to write instead.
 * `message` never holds personal data.
 */
export class Problem extends Error {
  override readonly name = 'Problem';
  constructor(
    readonly code: ProblemCode,
    message: string,
    readonly hint: string,
  ) {
    super(message);
  }
}
