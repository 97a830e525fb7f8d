import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { db } from '@/prisma/client';
import { benchVersion } from '@/prisma/data/bench-version';

/** The server's time and the version of what the Bench shows: `{ nowAt, version }`. Open pages ask it to stay true. */
export async function GET(): Promise<Response> {
  const shop = await currentShop();
  const version = await benchVersion(await db(), shop.cureSensorId, shop.version);
  return Response.json({ nowAt: now(), version }, { headers: { 'cache-control': 'no-store' } });
}
