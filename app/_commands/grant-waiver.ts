import type { WaiverInput } from '@/lib/contracts/waiver-form';
import { isOpenShort } from '@/lib/spec/finding';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { judgeRevision } from '@/prisma/data/spec-reports';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type GrantWaiverResult = Done | Refusal<'no-revision' | 'not-short' | 'no-person'>;

/**
 * Accepts a short of one revision in writing. It belongs to that revision alone: the next one is judged anew. What is
 * not short, or already accepted, is refused, so that no reason lies about for something that may come.
 */
export async function grantWaiver(
  database: Db,
  revisionId: string,
  { ruleId, subject, reason, personId }: WaiverInput,
  nowAt: Instant,
): Promise<GrantWaiverResult> {
  const report = await judgeRevision(database, revisionId, nowAt);
  if (report === null) {
    return { ok: false, code: 'no-revision', message: 'This revision is not there any more. Go back to Models.' };
  }
  const isShort = report.findings.some(
    (finding) => finding.ruleId === ruleId && finding.subject.key === subject && isOpenShort(finding),
  );
  if (!isShort) {
    const message = 'This is not short now, or somebody accepted it already. Reload the page.';
    return { ok: false, code: 'not-short', message };
  }
  return writeTx(database, async (tx): Promise<GrantWaiverResult> => {
    const person = await tx.person.findUnique({ where: { id: personId }, select: { isActive: true } });
    if (person === null || !person.isActive) {
      const message = 'This person is not in the shop any more. Choose another.';
      return { ok: false, code: 'no-person', message, field: 'personId' };
    }
    await tx.waiver.create({ data: { revisionId, ruleId, subject, reason, personId, grantedAt: new Date(nowAt) } });
    return DONE;
  });
}
