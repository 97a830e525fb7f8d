import { z } from 'zod';
import { RESOURCE_KINDS, type ResourceKind } from '@/lib/contracts/resource-forms';
import type { DbReader } from '@/prisma/client';

/** Days on which a resource has another number of places; both ends included. */
export interface ResourceChange {
  readonly id: string;
  readonly fromOn: string;
  readonly toOn: string;
  readonly capacity: number;
  readonly reason: string;
}

/** Places of one kind. */
export interface ShopResource {
  readonly id: string;
  readonly name: string;
  readonly kind: ResourceKind;
  readonly capacity: number;
  /** Wall time in which it can be used each day; null: around the clock. */
  readonly openFromMinute: number | null;
  readonly openToMinute: number | null;
  /** By first day. */
  readonly changes: readonly ResourceChange[];
}

const kindSchema = z.enum(RESOURCE_KINDS);
const WITH_CHANGES = {
  changes: {
    select: { id: true, fromOn: true, toOn: true, capacity: true, reason: true },
    orderBy: { fromOn: 'asc' },
  },
} as const;

/** All resources of the shop, by name. */
export async function listResources(reader: DbReader): Promise<ShopResource[]> {
  const rows = await reader.resource.findMany({ include: WITH_CHANGES, orderBy: { name: 'asc' } });
  return rows.map((row) => ({ ...row, kind: kindSchema.parse(row.kind) }));
}

/** One resource, or null when there is none of that id. */
export async function findResource(reader: DbReader, resourceId: string): Promise<ShopResource | null> {
  const row = await reader.resource.findUnique({ where: { id: resourceId }, include: WITH_CHANGES });
  return row === null ? null : { ...row, kind: kindSchema.parse(row.kind) };
}
