import { createHash } from 'node:crypto';
import type { Digest } from '@/lib/pulltest/pull-design';

/** SHA-256 in hexadecimal: what the order of pulling and the places on a board are drawn by. */
export const sha256: Digest = (text) => createHash('sha256').update(text).digest('hex');
