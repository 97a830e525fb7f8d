import { currentPeople, currentPerson, currentShop } from '@/app/_server/shop';
import { currentSpecShop } from '@/app/_server/spec-shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Section } from '@/app/_ui/page';
import { tallyText } from '@/app/models/_components/finding-status';
import { FindingsList } from '@/app/models/_components/findings-list';
import { StrengthCaution } from '@/app/models/_components/strength-caution';
import { WaiveButton } from '@/app/models/_components/waive-button';
import { db } from '@/prisma/client';
import type { Model } from '@/prisma/data/models';
import type { Revision } from '@/prisma/data/revisions';
import { judgeRevisionsIn } from '@/prisma/data/spec-reports';
import { LapsedWaivers } from './lapsed-waivers';

export interface FindingsSectionProps {
  readonly model: Model;
  readonly revision: Revision;
}

/** What the rules find of a revision as it is saved, with the waivers that accept its shorts. */
export async function FindingsSection({ model, revision }: FindingsSectionProps) {
  const database = await db();
  const [[report], units, people, person] = await Promise.all([
    judgeRevisionsIn(database, [revision.id], await currentSpecShop()),
    currentShop(),
    currentPeople(),
    currentPerson(),
  ]);
  const findings = report?.findings ?? [];
  return (
    <Section
      title="Findings"
      id="findings"
      lead={`By the rules of the shop: ${tallyText(findings)}.`}
      actions={
        <>
          {model.revisions.length > 1 && (
            <ButtonLink href={`/models/${model.id}/compare`}>Compare revisions</ButtonLink>
          )}
          <ButtonLink href="/rules">All rules</ButtonLink>
        </>
      }
    >
      <StrengthCaution />
      <FindingsList
        findings={findings}
        units={units}
        actionsOf={(finding) => (
          <WaiveButton finding={finding} revisionId={revision.id} people={people} personId={person?.id ?? null} />
        )}
      />
      <LapsedWaivers database={database} model={model} revision={revision} zone={units.timeZone} />
    </Section>
  );
}
