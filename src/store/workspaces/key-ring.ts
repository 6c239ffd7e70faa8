import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto';

/** A text encrypted with one key of a ring. */
export interface Sealed {
  readonly keyName: string;
  readonly text: string;
}

/** AES-256-GCM with keys that can be changed: the first seals, all open. */
export interface KeyRing {
  /** `boundTo` must be given again to open it: a row copied to another workspace opens nowhere. */
  seal(text: string, boundTo: string): Sealed;
  /** `undefined` when the ring lacks the key, or when the text was changed or bound to something else. */
  open(sealed: Sealed, boundTo: string): string | undefined;
  /** The key that seals. */
  readonly newest: string;
}

const CIPHER = 'aes-256-gcm';
/** Bytes. NIST SP 800-38D recommends a nonce of 96 bits; the tag is its longest, 128 bits. */
const NONCE = 12;
const TAG = 16;

/** @param keys of 32 bytes each, the newest first; at least one */
export function keyRing(keys: readonly Buffer[]): KeyRing {
  const named = new Map(keys.map((key) => [nameOf(key), key]));
  const [newest] = named.keys();
  if (newest === undefined) throw new RangeError('a key ring needs a key');
  return {
    newest,
    seal(text, boundTo) {
      const nonce = randomBytes(NONCE);
      const cipher = createCipheriv(CIPHER, named.get(newest) as Buffer, nonce);
      cipher.setAAD(Buffer.from(boundTo));
      const body = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
      return {
        keyName: newest,
        text: Buffer.concat([nonce, cipher.getAuthTag(), body]).toString('base64url'),
      };
    },
    open({ keyName, text }, boundTo) {
      const key = named.get(keyName);
      const bytes = Buffer.from(text, 'base64url');
      if (!key || bytes.length < NONCE + TAG) return undefined;
      const decipher = createDecipheriv(CIPHER, key, bytes.subarray(0, NONCE), { authTagLength: TAG });
      decipher.setAAD(Buffer.from(boundTo));
      decipher.setAuthTag(bytes.subarray(NONCE, NONCE + TAG));
      try {
        return Buffer.concat([decipher.update(bytes.subarray(NONCE + TAG)), decipher.final()]).toString();
      } catch {
        return undefined;
      }
    },
  };
}

/** Tells keys apart in the database and gives nothing of them away. */
const nameOf = (key: Buffer): string => createHash('sha256').update(key).digest('hex').slice(0, 12);
