/** What a child process is told to do. */
export interface ChildOrders {
  readonly url: string;
  readonly workspace: string;
  /** The book, serialized by `node:v8`. */
  readonly bookFile: string;
  readonly channelPort: number;
  readonly nowMs: number;
  /** Unique to this child: its batches are named after it. */
  readonly name: string;
  readonly work: 'forever' | 'until_idle';
}
