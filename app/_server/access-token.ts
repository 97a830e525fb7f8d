import 'server-only';
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { TokenScope } from '@/lib/contracts/access-token';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';

/** A token as it is shown once, and what is kept of it. */
export interface NewAccessToken {
  readonly id: string;
  /** `lw_<id>_<43 characters>`. */
  readonly token: string;
  readonly secretHash: string;
}

/**
 * Makes a token of 32 random bytes. Only a SHA-256 of the secret is kept: what is random in full cannot be guessed,
 * so a slow hash would add nothing.
 */
export function newAccessToken(): NewAccessToken {
  const id = randomBytes(8).toString('hex');
  const secret = randomBytes(32).toString('base64url');
  return { id, token: `lw_${id}_${secret}`, secretHash: hashOf(secret) };
}

function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

export type TokenCheck =
  | { readonly ok: true; readonly tokenId: string; readonly sensorId: string | null }
  | { readonly ok: false; readonly code: 'no-token' | 'unknown-token' | 'wrong-scope'; readonly message: string };

/** Whether a request may do what `scope` names, by its `Authorization: Bearer ...` header: see `checkTokenText`. */
export async function checkAccessToken(
  database: Db,
  headers: Headers,
  scope: TokenScope,
  nowAt: Instant,
): Promise<TokenCheck> {
  const sent = /^Bearer\s+(\S+)$/i.exec(headers.get('authorization') ?? '')?.[1];
  if (sent === undefined) {
    return {
      ok: false,
      code: 'no-token',
      message: 'Send a token: Authorization: Bearer lw_... It is made in Shop, Access.',
    };
  }
  return checkTokenText(database, sent, scope, nowAt);
}

/**
 * Whether a token may do what `scope` names. Notes when it was last used, at most once a minute. Revoked and expired
 * tokens are told apart from unknown ones by nobody but the shop.
 */
export async function checkTokenText(
  database: Db,
  sent: string,
  scope: TokenScope,
  nowAt: Instant,
): Promise<TokenCheck> {
  const match = /^lw_([0-9a-f]{16})_([A-Za-z0-9_-]{43})$/.exec(sent);
  const row = match === null ? null : await database.accessToken.findUnique({ where: { id: match[1] ?? '' } });
  const isRight =
    row !== null &&
    timingSafeEqual(Buffer.from(hashOf(match?.[2] ?? '')), Buffer.from(row.secretHash)) &&
    row.revokedAt === null &&
    (row.expiresAt === null || row.expiresAt.getTime() > nowAt);
  if (!isRight) {
    const message = 'This token is not known, or it was revoked or has expired. Make another in Shop, Access.';
    return { ok: false, code: 'unknown-token', message };
  }
  if (row.scope !== scope) {
    const message = `This token is for ${row.scope}, and ${scope} is needed. Make another in Shop, Access.`;
    return { ok: false, code: 'wrong-scope', message };
  }
  if (row.lastUsedAt === null || nowAt - row.lastUsedAt.getTime() >= MINUTE_MS) {
    const data = { lastUsedAt: new Date(nowAt) };
    await writeTx(database, (tx) => tx.accessToken.updateMany({ where: { id: row.id }, data }));
  }
  return { ok: true, tokenId: row.id, sensorId: row.sensorId };
}
