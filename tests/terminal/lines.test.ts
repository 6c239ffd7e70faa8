import { Readable } from 'node:stream';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linesOf } from '../../src/terminal/lines.ts';

const lines = async (chunks: readonly (string | Uint8Array)[], most?: number): Promise<string[]> => {
  const input = Readable.from(chunks.map((chunk) => Buffer.from(chunk)));
  const read: string[] = [];
  for await (const line of linesOf(input, most)) read.push(line);
  return read;
};

describe('lines of a byte stream', () => {
  test('an empty line is a line, the end after the last one is not', async () => {
    expect(await lines(['a\n\nb\n'])).toEqual(['a', '', 'b']);
  });

  test('a last line without an end counts', async () => {
    expect(await lines(['a\nb'])).toEqual(['a', 'b']);
  });

  test('CR LF is one line end', async () => {
    expect(await lines(['a\r', '\nb\r\n'])).toEqual(['a', 'b']);
  });

  test('no input has no lines', async () => {
    expect(await lines([])).toEqual([]);
  });

  test('invalid UTF-8 is read with the replacement character and the next line is untouched', async () => {
    expect(await lines([Uint8Array.of(0x34, 0xff, 0x30, 0x0a), 'help\n'])).toEqual(['4\ufffd0', 'help']);
  });

  test('a character cut in two by a chunk is whole again', async () => {
    const bytes = Buffer.from('½ cup\n');
    expect(await lines([bytes.subarray(0, 1), bytes.subarray(1)])).toEqual(['½ cup']);
  });

  test('a line beyond the limit is cut there and the next line is whole', async () => {
    expect(await lines(['aaaa', 'aaaa', 'aaaa\nb\n'], 6)).toEqual(['aaaaaa', 'b']);
  });

  test('chunk borders never change the lines', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 60 }), fc.nat(60), async (text, cut) => {
        const bytes = Buffer.from(text);
        expect(await lines([bytes.subarray(0, cut), bytes.subarray(cut)])).toEqual(await lines([bytes]));
      }),
      { numRuns: 300 },
    );
  });
});
