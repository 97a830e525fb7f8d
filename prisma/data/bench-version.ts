import type { DbReader } from '@/prisma/client';

/**
 * A short text that changes whenever the Bench would look different for another reason than the clock: an event in
 * an open batch, a batch opened, finished or reopened, a reading, a setting, a data sheet.
 */
export async function benchVersion(
  reader: DbReader,
  cureSensorId: string | null,
  shopVersion: number,
): Promise<string> {
  const { _count, _sum, _max } = await reader.batch.aggregate({
    where: { status: 'open' },
    _count: true,
    _sum: { lastSeq: true },
    _max: { number: true },
  });
  const materials = await reader.material.aggregate({ _sum: { version: true }, _count: true });
  const sensor =
    cureSensorId === null
      ? null
      : await reader.sensor.findUnique({ where: { id: cureSensorId }, select: { version: true } });
  const parts = [
    _count,
    _sum.lastSeq ?? 0,
    _max.number ?? 0,
    shopVersion,
    sensor?.version ?? 0,
    materials._count,
    materials._sum.version ?? 0,
  ];
  return parts.join('-');
}
