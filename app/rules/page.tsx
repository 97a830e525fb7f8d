import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Page, Section } from '@/app/_ui/page';
import { FindingChanges } from '@/app/models/_components/finding-changes';
import { StrengthCaution } from '@/app/models/_components/strength-caution';
import { RULES } from '@/lib/spec/rules';
import { RULES_VERSION } from '@/lib/spec/rules-version';
import { db } from '@/prisma/client';
import { readShopFindings } from '@/prisma/data/shop-findings';
import { ConsistencyMatrix } from './_components/consistency-matrix';
import { RuleTable } from './_components/rule-table';

export const metadata: Metadata = { title: 'Rules' };

/** Every rule with its source and the shop's figure, who is short of it, and what goes with which wire. */
export default async function RulesPage() {
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const { shop: rules, judged, affected, inUse } = await readShopFindings(database, now());
  return (
    <Page
      title="Rules"
      lead={`${RULES.length} checks on the newest revision of every model, version ${RULES_VERSION}.`}
      actions={
        <ButtonLink href="/rules/figures" weight="primary">
          Set the shop's figures
        </ButtonLink>
      }
    >
      <StrengthCaution />
      <Section title="Open batches affected" lead="Found otherwise today than when they were opened.">
        {affected.length === 0 ? (
          <p className="text-ink-soft">None: what open batches took along is what would be found today.</p>
        ) : (
          affected.map(({ batchId, number, modelName, revisionLetter, changes }) => (
            <div key={batchId} className="grid gap-1">
              <h3 className="text-lg font-bold">
                <Link href={`/batches/${batchId}`} className="underline underline-offset-4">
                  Batch {number}
                </Link>
                , {modelName}, revision {revisionLetter}
              </h3>
              <FindingChanges changes={changes} units={shop} />
            </div>
          ))
        )}
      </Section>
      <Section title="Every rule">
        <RuleTable judged={judged} settings={rules.settings} units={shop} />
      </Section>
      <Section
        id="consistency"
        title="Same wire, same way"
        lead="Bit, glue and depth that each model uses with a wire. What differs from the shop's usual way is marked."
      >
        <ConsistencyMatrix habits={rules.habits ?? []} models={inUse} units={shop} />
      </Section>
    </Page>
  );
}
