import { ruleTitle } from '@/app/models/_components/rule-title';
import { compareRevisionLetters } from '@/lib/spec/revision-letter';
import { dateText } from '@/lib/units/format-instant';
import type { Db } from '@/prisma/client';
import type { Model } from '@/prisma/data/models';
import type { Revision } from '@/prisma/data/revisions';
import { listWaivers } from '@/prisma/data/waivers';

export interface LapsedWaiversProps {
  readonly database: Db;
  readonly model: Model;
  readonly revision: Revision;
  readonly zone: string;
}

/** Waivers of the revisions before this one: they lapsed with it, and a short that is still meant is waived anew. */
export async function LapsedWaivers({ database, model, revision, zone }: LapsedWaiversProps) {
  const before = model.revisions.filter(({ letter }) => compareRevisionLetters(letter, revision.letter) < 0);
  const waivers = await listWaivers(
    database,
    before.map(({ id }) => id),
  );
  const standing = waivers.filter(({ withdrawnAt }) => withdrawnAt === null);
  if (standing.length === 0) return null;
  const letterOf = new Map(before.map(({ id, letter }) => [id, letter]));
  return (
    <div className="grid gap-2">
      <h3 className="text-lg font-bold">Lapsed waivers</h3>
      <p className="max-w-2xl text-sm text-ink-soft">
        Accepted for an earlier revision, not for {revision.letter}. Where it is still meant, waive it anew.
      </p>
      <ul className="grid gap-1">
        {standing.map(({ waiverId, revisionId, ruleId, reason, personName, grantedAt }) => (
          <li key={waiverId}>
            Revision {letterOf.get(revisionId)}: {ruleTitle(ruleId)}. “{reason}”{' '}
            <span className="text-ink-soft">
              {personName}, {dateText(grantedAt, zone)}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
