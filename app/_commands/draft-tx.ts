import { type Db, type Tx, writeTx } from '@/prisma/client';

/** Carries a refusal out of a transaction, so that this is undone. */
class Refused<Result> extends Error {
  constructor(readonly result: Result) {
    super('refused');
  }
}

/**
 * Changes a draft in one transaction, undone when the change is refused: a draft that was not changed must not look
 * as if somebody had changed it, or the second try would be refused too.
 */
export async function draftTx<Result extends { readonly ok: boolean }>(
  database: Db,
  work: (tx: Tx) => Promise<Result>,
): Promise<Result> {
  const refusals = new WeakSet<object>();
  try {
    return await writeTx(database, async (tx) => {
      const result = await work(tx);
      if (result.ok) return result;
      const refused = new Refused(result);
      refusals.add(refused);
      throw refused;
    });
  } catch (error) {
    if (error instanceof Refused && refusals.has(error)) return error.result;
    throw error;
  }
}
