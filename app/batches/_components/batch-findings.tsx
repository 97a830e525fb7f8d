import { now } from '@/app/_server/clock';
import { ButtonLink } from '@/app/_ui/button-link';
import { Section } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { FindingChanges } from '@/app/models/_components/finding-changes';
import { tallyText } from '@/app/models/_components/finding-status';
import { ruleTitle } from '@/app/models/_components/rule-title';
import { findingChanges, standingOf } from '@/lib/spec/finding-changes';
import type { TakenFinding } from '@/lib/spec/taken-findings';
import { dateText } from '@/lib/units/format-instant';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { db } from '@/prisma/client';
import type { ShopSettings } from '@/prisma/data/shop';
import { findBatchFindings, judgeRevision } from '@/prisma/data/spec-reports';

export interface BatchFindingsProps {
  readonly batchId: string;
  readonly revisionId: string;
  readonly modelId: string;
  readonly shop: ShopSettings;
}

/** What the rules found when the batch was opened, and what they find otherwise now. */
export async function BatchFindings({ batchId, revisionId, modelId, shop }: BatchFindingsProps) {
  const database = await db();
  const kept = await findBatchFindings(database, batchId);
  const model = <ButtonLink href={`/models/${modelId}#findings`}>The model's findings</ButtonLink>;
  if (kept === null || kept.taken === null) {
    return (
      <Section title="Findings" actions={model}>
        <p className="text-ink-soft">This batch was opened before there were rules: nothing was taken along.</p>
      </Section>
    );
  }
  const report = await judgeRevision(database, revisionId, now());
  const { findings, judgedAt } = kept.taken;
  const changes = findingChanges(findings, report?.findings ?? []);
  return (
    <Section
      title="Findings"
      lead={`Taken along when it was opened on ${dateText(judgedAt, shop.timeZone)}: ${tallyText(findings)}.`}
      actions={model}
    >
      <ul className="grid">
        {findings
          .filter(({ verdict }) => verdict !== 'holds')
          .map((finding) => (
            <TakenLine key={`${finding.ruleId} ${finding.subject.key}`} finding={finding} units={shop} />
          ))}
      </ul>
      {report !== null && report.rulesVersion !== kept.rulesVersion && (
        <p className="text-ink-soft">
          It was judged by version {kept.rulesVersion} of the rules; today's are version {report.rulesVersion}.
        </p>
      )}
      <h3 className="text-lg font-bold">Since then</h3>
      {changes.length === 0 ? (
        <p className="text-ink-soft">Nothing is found otherwise today.</p>
      ) : (
        <FindingChanges changes={changes} units={shop} />
      )}
    </Section>
  );
}

function TakenLine({ finding, units }: { readonly finding: TakenFinding; readonly units: UnitChoice }) {
  const { subject, ruleId, words, waiver } = finding;
  return (
    <li className="grid gap-x-6 gap-y-1 border-b border-line py-2 sm:grid-cols-[9rem_1fr]">
      <StatusMark status={standingOf(finding)} />
      <p>
        <strong>{subject.name}</strong>: {ruleTitle(ruleId)}.{' '}
        <span className="text-ink-soft">{wordsText(words, units)}</span>
        {waiver !== null && (
          <>
            {' '}
            Accepted by {waiver.personName}: “{waiver.reason}”
          </>
        )}
      </p>
    </li>
  );
}
