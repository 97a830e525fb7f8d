import type { ProfileInput } from '@/lib/contracts/profile-form';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { saveShop } from '@/prisma/data/shop';

/** Saves the usual week of temperature and how far it may be off. Every clock is read anew. */
export function saveTemperatureProfile(database: Db, input: ProfileInput, nowAt: Instant): Promise<void> {
  const { otherwiseC, periods, profileTolerance, floorC, ceilingC, sensorTolerance } = input;
  const change = {
    temperatureProfile: {
      otherwiseC,
      periods: periods.map(({ weekdays, from, to, temperatureC }) => ({
        weekdays,
        fromMinute: from,
        toMinute: to,
        temperatureC,
      })),
    },
    profileToleranceC: profileTolerance,
    floorC,
    ceilingC,
    sensorToleranceC: sensorTolerance,
  };
  return writeTx(database, (tx) => saveShop(tx, change, nowAt));
}
