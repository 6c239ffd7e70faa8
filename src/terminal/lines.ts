/** More of one line than this is not kept: it is far beyond what the chat reads, and it bounds memory. */
export const MOST_LINE_BYTES = 64 * 1024;

/**
 * Splits a byte stream into lines of text, whatever comes: invalid UTF-8 becomes U+FFFD, CR LF is a line end, a line
 * beyond `mostBytes` is cut there and the rest of it dropped. A last line without an end counts; an empty rest does not.
 */
export async function* linesOf(
  input: AsyncIterable<Uint8Array>,
  mostBytes = MOST_LINE_BYTES,
): AsyncGenerator<string> {
  let kept: Uint8Array[] = [];
  let size = 0;
  let started = false;
  const keep = (bytes: Uint8Array): void => {
    const part = bytes.subarray(0, mostBytes - size);
    if (part.length > 0) kept.push(part);
    size += part.length;
    started ||= bytes.length > 0;
  };
  const take = (): string => {
    const text = new TextDecoder().decode(Buffer.concat(kept)).replace(/\r$/, '');
    kept = [];
    size = 0;
    started = false;
    return text;
  };
  for await (const chunk of input) {
    let from = 0;
    for (let end = chunk.indexOf(10); end !== -1; end = chunk.indexOf(10, from)) {
      keep(chunk.subarray(from, end));
      yield take();
      from = end + 1;
    }
    keep(chunk.subarray(from));
  }
  if (started) yield take();
}
