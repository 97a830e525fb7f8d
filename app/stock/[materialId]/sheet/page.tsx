import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import { Caution } from '@/app/_ui/caution';
import { Page } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { StartChoice } from '@/app/stock/_components/start-choice';
import { db } from '@/prisma/client';
import { findMaterial, hasSheet } from '@/prisma/data/materials';
import { STARTING_MATERIALS } from '@/prisma/seed/starting-materials';
import { saveSheetAction } from '../actions';
import { MixingFields } from './_components/mixing-fields';
import { PotLifeFields } from './_components/pot-life-fields';
import { RateFields } from './_components/rate-fields';
import { ReadyFields } from './_components/ready-fields';
import { SheetSourceFields } from './_components/sheet-source-fields';
import { sheetText } from './_components/sheet-text';

export const metadata: Metadata = { title: 'Data sheet' };

interface SheetPageProps {
  readonly params: Promise<{ materialId: string }>;
  readonly searchParams: SearchParams;
}

export default async function SheetPage({ params, searchParams }: SheetPageProps) {
  const [{ materialId }, { word }, shop, database] = await Promise.all([
    params,
    readListQuery(searchParams),
    currentShop(),
    db(),
  ]);
  const material = await findMaterial(database, materialId);
  if (material === null || !hasSheet(material.kind)) notFound();
  const generic = STARTING_MATERIALS.find((start) => start.id === word('from') && start.sheet !== null) ?? null;
  const text = sheetText(generic?.sheet ?? material.sheet, shop);
  return (
    <Page
      title={`Data sheet of ${material.name}`}
      lead="Take the technical data sheet of the product and write down what it says. What it does not say stays empty: a clock that needs it then says so."
      up={{ href: `/stock/${materialId}`, label: `${material.name}, without saving` }}
    >
      <Caution topic="epoxy" />
      <StartChoice
        action={`/stock/${materialId}/sheet`}
        label="Start from a general class"
        starts={STARTING_MATERIALS.filter((start) => start.sheet !== null)}
        chosen={generic}
        hint="Takes the place of what is in the form below; nothing is saved by it."
      />
      {/* A choice of a class brings the form anew, with its figures. */}
      <ActionForm key={generic?.id ?? 'own'} action={saveSheetAction.bind(null, materialId)} className="grid gap-10">
        <input type="hidden" name="seenVersion" value={material.version} />
        <SheetSourceFields
          text={text}
          sheetRevision={generic === null ? material.sheetRevision : ''}
          sheetOn={generic === null ? material.sheetOn : null}
        />
        <ReadyFields text={text} units={shop} />
        <RateFields text={text} units={shop} />
        <PotLifeFields text={text} units={shop} />
        <MixingFields text={text} units={shop} />
        <div className="flex flex-wrap gap-3 border-t-2 border-ink pt-4">
          <SubmitButton>Save the data sheet</SubmitButton>
          <ButtonLink href={`/stock/${materialId}`} weight="quiet">
            Leave without saving
          </ButtonLink>
        </div>
      </ActionForm>
    </Page>
  );
}
