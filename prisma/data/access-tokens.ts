import { z } from 'zod';
import { TOKEN_SCOPES, type TokenScope } from '@/lib/contracts/access-token';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';

/** A token without its secret, which is not kept. */
export interface AccessTokenLine {
  readonly id: string;
  readonly name: string;
  readonly scope: TokenScope;
  readonly sensorName: string | null;
  readonly createdAt: Instant;
  readonly lastUsedAt: Instant | null;
  readonly expiresAt: Instant | null;
  readonly revokedAt: Instant | null;
}

const scopeSchema = z.enum(TOKEN_SCOPES);

/** The newest 200 tokens, newest first. */
export async function listAccessTokens(reader: DbReader): Promise<AccessTokenLine[]> {
  const rows = await reader.accessToken.findMany({
    select: {
      id: true,
      name: true,
      scope: true,
      createdAt: true,
      lastUsedAt: true,
      expiresAt: true,
      revokedAt: true,
      sensor: { select: { name: true } },
    },
    orderBy: { createdAt: 'desc' },
    take: 200,
  });
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    scope: scopeSchema.parse(row.scope),
    sensorName: row.sensor?.name ?? null,
    createdAt: row.createdAt.getTime(),
    lastUsedAt: row.lastUsedAt?.getTime() ?? null,
    expiresAt: row.expiresAt?.getTime() ?? null,
    revokedAt: row.revokedAt?.getTime() ?? null,
  }));
}
