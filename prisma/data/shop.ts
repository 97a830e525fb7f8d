import { z } from 'zod';
import { ruleFiguresSchema } from '@/lib/contracts/rule-figures';
import { temperatureProfileSchema } from '@/lib/contracts/temperature-profile';
import type { TemperatureProfile } from '@/lib/cure/temperature-profile';
import { DEFAULT_RULE_FIGURES, type RuleFigures } from '@/lib/spec/rule-figures';
import type { Instant } from '@/lib/units/instant';
import { isTimeZone } from '@/lib/units/time-zone';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { FORCE_UNITS, LENGTH_UNITS, MASS_UNITS, TEMPERATURE_UNITS } from '@/lib/units/unit-choice';
import type { DbReader, Tx } from '@/prisma/client';

/** The one row of settings has this id. */
const SHOP_ID = 1;

/** What the shop has set. */
export interface ShopSettings extends UnitChoice {
  readonly name: string;
  /** IANA name. */
  readonly timeZone: string;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly temperatureProfile: TemperatureProfile;
  /** How far the real temperature may be from the profile, either way, degC. */
  readonly profileToleranceC: number;
  /** The coldest and the warmest the shop gets: they bound what an unlogged gap may hide, degC. */
  readonly floorC: number;
  readonly ceilingC: number;
  /** How far a logger may be off, either way, degC. */
  readonly sensorToleranceC: number;
  /** The sensor whose readings rule the cure clocks; null: the profile does. */
  readonly cureSensorId: string | null;
  /** What the rules of a spec ask for. */
  readonly ruleFigures: RuleFigures;
  readonly demoLoadedAt: Instant | null;
  /** Raised by every change that can move a clock. */
  readonly version: number;
}

/** What a shop has before anybody set anything. Temperatures chosen: a room heated by day and left alone by night. */
export function untouchedShop(): ShopSettings {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return {
    name: 'Our workshop',
    timeZone: isTimeZone(zone) ? zone : 'UTC',
    lengthUnit: 'mm',
    temperatureUnit: 'C',
    massUnit: 'g',
    forceUnit: 'N',
    currency: 'USD',
    temperatureProfile: {
      otherwiseC: 16,
      periods: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], fromMinute: 8 * 60, toMinute: 22 * 60, temperatureC: 20 }],
    },
    profileToleranceC: 2,
    floorC: 8,
    ceilingC: 30,
    sensorToleranceC: 0.5,
    cureSensorId: null,
    ruleFigures: DEFAULT_RULE_FIGURES,
    demoLoadedAt: null,
    version: 0,
  };
}

const unitsSchema = z.object({
  lengthUnit: z.enum(LENGTH_UNITS),
  temperatureUnit: z.enum(TEMPERATURE_UNITS),
  massUnit: z.enum(MASS_UNITS),
  forceUnit: z.enum(FORCE_UNITS),
});

/** The shop's settings; those of an untouched shop when none were saved yet. */
export async function getShop(reader: DbReader): Promise<ShopSettings> {
  const row = await reader.shop.findUnique({ where: { id: SHOP_ID } });
  if (row === null) return untouchedShop();
  return {
    name: row.name,
    timeZone: row.timeZone,
    ...unitsSchema.parse(row),
    currency: row.currency,
    temperatureProfile: temperatureProfileSchema.parse(row.temperatureProfile),
    profileToleranceC: row.profileToleranceC,
    floorC: row.floorC,
    ceilingC: row.ceilingC,
    sensorToleranceC: row.sensorToleranceC,
    cureSensorId: row.cureSensorId,
    ruleFigures: row.strengthSettings === null ? DEFAULT_RULE_FIGURES : ruleFiguresSchema.parse(row.strengthSettings),
    demoLoadedAt: row.demoLoadedAt?.getTime() ?? null,
    version: row.version,
  };
}

/** What one save may change; the version is raised by every one of them. */
export type ShopChange = Partial<Omit<ShopSettings, 'version' | 'demoLoadedAt'>>;

/** Saves settings, making the row when it is not there yet. Raises the version, so that every clock is read anew. */
export async function saveShop(tx: Tx, change: ShopChange, nowAt: Instant): Promise<void> {
  const { version, demoLoadedAt, temperatureProfile, ruleFigures, ...rest } = { ...(await getShop(tx)), ...change };
  const data = {
    ...rest,
    ...(change.ruleFigures === undefined ? {} : { strengthSettings: { ...ruleFigures } }),
    temperatureProfile: JSON.parse(JSON.stringify(temperatureProfile)),
    version: version + 1,
    updatedAt: new Date(nowAt),
  };
  await tx.shop.upsert({
    where: { id: SHOP_ID },
    create: { ...data, id: SHOP_ID, createdAt: new Date(nowAt), demoLoadedAt: null },
    update: data,
  });
}
