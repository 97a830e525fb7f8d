import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Page, Section } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { db } from '@/prisma/client';
import { findModel } from '@/prisma/data/models';
import { findRevision } from '@/prisma/data/revisions';
import { AnchorTable } from './_components/anchor-table';
import { BillTable } from './_components/bill-table';
import { BodySection } from './_components/body-section';
import { FindingsSection } from './_components/findings-section';
import { ModelCare } from './_components/model-care';
import { RevisionBar } from './_components/revision-bar';
import { RouteList } from './_components/route-list';
import { TryoutSection } from './_tryout/tryout-section';

interface ModelPageProps {
  readonly params: Promise<{ modelId: string }>;
  readonly searchParams: SearchParams;
}

export async function generateMetadata({ params }: ModelPageProps): Promise<Metadata> {
  const model = await findModel(await db(), (await params).modelId);
  return { title: model?.name ?? 'Not found' };
}

export default async function ModelPage({ params, searchParams }: ModelPageProps) {
  const [{ modelId }, { word }, database, shop] = await Promise.all([
    params,
    readListQuery(searchParams),
    db(),
    currentShop(),
  ]);
  const model = await findModel(database, modelId);
  const wanted = word('revision');
  const head = model?.revisions.find((revision) => revision.letter === wanted) ?? model?.revisions[0];
  const revision = head === undefined ? null : await findRevision(database, head.id);
  if (model === null || revision === null) notFound();
  const isDraft = revision.frozenAt === null;
  const edit = (part: string) => (isDraft ? <ButtonLink href={`/models/${modelId}/${part}`}>Change</ButtonLink> : null);
  return (
    <Page
      title={model.name}
      lead={model.note === '' ? undefined : model.note}
      up={{ href: '/models', label: 'Models' }}
      actions={
        <>
          {model.isArchived && <StatusMark status="archived" />}
          <ButtonLink href={`/models/${modelId}/cost?revision=${revision.letter}`}>Cost</ButtonLink>
          <ButtonLink href={`/batches/new?revision=${revision.id}`} weight="primary">
            New batch of {revision.letter}
          </ButtonLink>
        </>
      }
    >
      <RevisionBar model={model} revision={revision} zone={shop.timeZone} />
      <Section title="Body" actions={edit('body')}>
        <BodySection revision={revision} units={shop} />
      </Section>
      <TryoutSection modelName={model.name} revision={revision} />
      <Section title="Anchors" actions={edit('anchors')}>
        <AnchorTable anchors={revision.anchors} units={shop} />
      </Section>
      <FindingsSection model={model} revision={revision} />
      <Section
        title="Route"
        lead="The steps from blank to finished lure, and what each waits for."
        actions={
          <>
            <ButtonLink href={`/models/${modelId}/planning?revision=${revision.letter}`} weight="quiet">
              Planning
            </ButtonLink>
            {edit('route')}
          </>
        }
      >
        <RouteList revision={revision} />
      </Section>
      <Section title="Bill" lead="What goes into one piece." actions={edit('bill')}>
        <BillTable lines={revision.billLines} units={shop} />
      </Section>
      <Section title="Name and keeping">
        <ModelCare model={model} />
      </Section>
    </Page>
  );
}
