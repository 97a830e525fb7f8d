import 'server-only';
import { profileTemperatureC } from '@/lib/cure/temperature-profile';
import { whenText } from '@/lib/units/format-instant';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import type { DbReader } from '@/prisma/client';
import { findNewestReading } from '@/prisma/data/cure-temperatures';
import { listMixableMaterials } from '@/prisma/data/mix-materials';
import type { ShopSettings } from '@/prisma/data/shop';
import type { BenchWorld, RoomNow } from '../_bench/bench-context';
import type { BenchEntry } from './bench';

/** A reading older than this no longer tells the room's temperature. Chosen: the longest gap that is bridged. */
const STALE_MS = 6 * HOUR_MS;

/** What the dialogs of the bench fill in: the room, what can be mixed, and how much of it was mixed last. */
export async function loadBenchWorld(
  reader: DbReader,
  shop: ShopSettings,
  entries: readonly Pick<BenchEntry, 'batch'>[],
  nowAt: Instant,
): Promise<BenchWorld> {
  const materials = await listMixableMaterials(reader);
  const newest = newestMixes(entries);
  return {
    renderedAt: nowAt,
    zone: shop.timeZone,
    massUnit: shop.massUnit,
    temperatureUnit: shop.temperatureUnit,
    room: await roomNow(reader, shop, nowAt),
    materials: materials.map(({ id, name, sheet, lots }) => ({
      id,
      name,
      sheet,
      lots: lots.map((lot) => ({ id: lot.id, label: lot.part === 'whole' ? lot.code : `${lot.code} ${lot.part}` })),
      lastMassG: newest.get(id)?.massG ?? null,
      lastLotIds: newest.get(id)?.lotIds ?? [],
    })),
  };
}

/** The room's temperature as a fresh reading tells it, else as the shop's usual week does. */
export async function roomNow(reader: DbReader, shop: ShopSettings, nowAt: Instant): Promise<RoomNow> {
  const reading = shop.cureSensorId === null ? null : await findNewestReading(reader, shop.cureSensorId);
  if (reading !== null && nowAt - reading.at < STALE_MS) {
    const { temperatureC, humidityPct, at } = reading;
    return { temperatureC, humidityPct, source: `The room as read at ${whenText(at, nowAt, shop.timeZone)}.` };
  }
  const { weekday, minuteOfDay } = wallTimeAt(nowAt, shop.timeZone);
  const temperatureC = profileTemperatureC(shop.temperatureProfile, weekday, minuteOfDay);
  return { temperatureC, humidityPct: null, source: 'No recent reading: the usual of this hour, from Shop.' };
}

type NewestMix = { readonly massG: number; readonly lotIds: readonly string[]; readonly mixedAt: Instant };

/** The newest mix of each material among the open batches: what is mixed next is usually the same again. */
function newestMixes(entries: readonly Pick<BenchEntry, 'batch'>[]): ReadonlyMap<string, NewestMix> {
  const newest = new Map<string, NewestMix>();
  for (const { batch } of entries) {
    for (const mix of batch.state.mixes) {
      if (mix.mixedAt > (newest.get(mix.materialId)?.mixedAt ?? 0)) newest.set(mix.materialId, mix);
    }
  }
  return newest;
}
