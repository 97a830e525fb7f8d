import 'server-only';
import { cache } from 'react';
import { db } from '@/prisma/client';
import { listActivePeople, type PersonName } from '@/prisma/data/people';
import { getShop, type ShopSettings } from '@/prisma/data/shop';
import { chosenPersonId } from './device';

/** The shop's settings, read once for a request. */
export const currentShop = cache(async (): Promise<ShopSettings> => getShop(await db()));

/** The people who work in the shop now, read once for a request. */
export const currentPeople = cache(async (): Promise<readonly PersonName[]> => listActivePeople(await db()));

/** The person who said they are at this device; null when nobody did, or when they left the shop. */
export const currentPerson = cache(async (): Promise<PersonName | null> => {
  const [people, personId] = await Promise.all([currentPeople(), chosenPersonId()]);
  return people.find((person) => person.id === personId) ?? null;
});
