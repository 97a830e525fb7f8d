import type { ShopSettingsInput } from '@/lib/contracts/shop-settings';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { saveShop } from '@/prisma/data/shop';

/** Saves name, zone and units. The zone moves the profile, so every clock is read anew. */
export function saveShopSettings(database: Db, input: ShopSettingsInput, nowAt: Instant): Promise<void> {
  return writeTx(database, (tx) => saveShop(tx, input, nowAt));
}
