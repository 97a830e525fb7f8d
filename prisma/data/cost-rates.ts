import type { DbReader } from '@/prisma/client';

/** What the shop reckons with. Null: nobody has said. */
export interface CostRates {
  /** An hour of attended work, in minor units of the shop's money. */
  readonly labourPerHourMinor: number | null;
  /** Of a price, what is to remain after the cost; 0 to below 1. */
  readonly marginShare: number | null;
}

/** The shop's hourly rate and wanted margin. */
export async function getCostRates(reader: DbReader): Promise<CostRates> {
  const row = await reader.shop.findFirst({ select: { labourPerHourMinor: true, marginShare: true } });
  return row ?? { labourPerHourMinor: null, marginShare: null };
}
