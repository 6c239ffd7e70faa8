/** Somebody else read this calendar since it was looked up: what was worked out from the older state is not written. */
export class ReadMeanwhile extends Error {
  constructor() {
    super('The calendar was read meanwhile.');
    this.name = 'ReadMeanwhile';
  }
}
