import { createHash } from 'node:crypto';

/** A key or a secret as it is looked up by, of one length and not to be read back. */
export const hashOf = (text: string): string => createHash('sha256').update(text).digest('base64url');
