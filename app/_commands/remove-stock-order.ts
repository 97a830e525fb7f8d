import { type Db, writeTx } from '@/prisma/client';

/** Takes out an order that came or was called off. One that is gone already is no fault. */
export async function removeStockOrder(database: Db, orderId: string): Promise<void> {
  await writeTx(database, (tx) => tx.stockOrder.deleteMany({ where: { id: orderId } }));
}
