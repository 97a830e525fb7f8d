import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import { TextField } from '@/app/_ui/field';
import { Page, Section } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { SOURCE_OPTIONS } from '@/app/stock/_components/figure-source-fields';
import { StartChoice } from '@/app/stock/_components/start-choice';
import { STRENGTH_FIELDS, strengthSources, strengthValues } from '@/app/stock/_components/strength-figures';
import type { StrengthFigures } from '@/lib/materials/strength-figures';
import { WOOD_TABLE } from '@/lib/materials/wood-table';
import { db } from '@/prisma/client';
import { findMaterial, strengthKindOf } from '@/prisma/data/materials';
import { saveStrengthAction } from '../actions';
import { StrengthFields } from './_components/strength-fields';

export const metadata: Metadata = { title: 'Strength' };

interface StrengthPageProps {
  readonly params: Promise<{ materialId: string }>;
  readonly searchParams: SearchParams;
}

export default async function StrengthPage({ params, searchParams }: StrengthPageProps) {
  const [{ materialId }, { word }, shop, database] = await Promise.all([
    params,
    readListQuery(searchParams),
    currentShop(),
    db(),
  ]);
  const material = await findMaterial(database, materialId);
  const kind = material === null ? null : strengthKindOf(material.kind);
  if (material === null || kind === null) notFound();
  const tabulated = kind === 'wood' ? WOOD_TABLE.find((wood) => wood.id === word('from')) : undefined;
  const figures: StrengthFigures | null =
    tabulated === undefined ? material.strength : { kind: 'wood', sheet: tabulated.sheet };
  const sources = figures === null ? {} : strengthSources(figures);
  return (
    <Page
      title={`Strength of ${material.name}`}
      lead="What you do not know stays empty: what rests on it is then not judged. A figure without a source is marked as yours."
      up={{ href: `/stock/${materialId}`, label: `${material.name}, without saving` }}
    >
      {kind === 'wood' && (
        <StartChoice
          action={`/stock/${materialId}/strength`}
          label="Start from a wood of the Wood Handbook"
          starts={WOOD_TABLE}
          chosen={tabulated ?? null}
          hint="Means of small clear specimens, never design values. Nothing is saved by it."
        />
      )}
      {/* A choice from the table brings the form anew, with its figures. */}
      <ActionForm
        key={tabulated?.id ?? 'own'}
        action={saveStrengthAction.bind(null, materialId, kind)}
        className="grid gap-10"
      >
        <input type="hidden" name="seenVersion" value={material.version} />
        <Section title="Source" lead="Stands beside every figure below that names no source of its own.">
          <div className="grid gap-5 sm:grid-cols-2">
            <SelectField
              name="source.kind"
              label="Kind of source"
              emptyLabel="none: the figures are yours"
              options={SOURCE_OPTIONS}
              isOptional
            />
            <TextField name="source.text" label="Where the figures stand" maxLength={1000} isOptional />
          </div>
        </Section>
        <Section title="Figures">
          <StrengthFields
            fields={STRENGTH_FIELDS[kind]}
            values={figures === null ? {} : strengthValues(figures)}
            sources={sources}
            units={shop}
          />
        </Section>
        <div className="flex flex-wrap gap-3 border-t-2 border-ink pt-4">
          <SubmitButton>Save the figures</SubmitButton>
          <ButtonLink href={`/stock/${materialId}`} weight="quiet">
            Leave without saving
          </ButtonLink>
        </div>
      </ActionForm>
    </Page>
  );
}
