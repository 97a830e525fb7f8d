import 'server-only';
import { cache } from 'react';
import { now } from '@/app/_server/clock';
import { db } from '@/prisma/client';
import { type ReadSpecShop, readSpecShop } from '@/prisma/data/spec-shop';

/** The shop as the rules see it, read once for a request. */
export const currentSpecShop = cache(async (): Promise<ReadSpecShop> => readSpecShop(await db(), now()));
