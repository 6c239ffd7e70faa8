/**
 * What Slack accepts in one message. Characters unless said; from Slack's Block Kit reference and the types in
 * @slack/types, except where marked ours.
 */
export const LIMITS = {
  blocks: 50,
  header: 150,
  /** A section's limit; Slack states none for a rich text element, so ours keeps to the same. */
  textElement: 3_000,
  /** Ours: an item of a list, a cell of a table. */
  item: 500,
  /** Ours: a title that is no header; all cautions together; an error. They leave room for what they are about. */
  title: 600,
  statement: 1_500,
  inputLabel: 2_000,
  inputText: 3_000,
  /** Ours: one line of a form. */
  inputLine: 200,
  optionText: 75,
  checkboxes: 10,
  placeholder: 150,
  viewTitle: 24,
  /** Ours: one section of a home as JSON. */
  homeSection: 4_000,
  viewMetadata: 3_000,
  /** Blocks of a modal or a home. */
  viewBlocks: 100,
  buttonLabel: 75,
  buttonValue: 2_000,
  /** Slack advises 4,000 for the top-level text and cuts at 40,000. */
  fallbackText: 4_000,
  /** Ours: all blocks as JSON. Slack refuses somewhere near 13,200 (`msg_blocks_too_long`), undocumented. */
  message: 12_000,
  /** Ours: a row of follow-ups fits a phone. */
  buttons: 5,
  /** Ours: the row of buttons as JSON. */
  buttonsCost: 3_000,
  /** Ours: what a phone shows of a button before it cuts. */
  buttonShown: 30,
  /** Ours: columns of a monospaced line that a phone shows without wrapping it. */
  phoneColumns: 40,
} as const;
