import type { Metadata } from 'next';
import { materialOptions } from '@/app/models/_components/material-options';
import { plainDecimals } from '@/lib/units/quantity-input';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { DraftForm } from '../_components/draft-form';
import { loadDraft } from '../_components/load-draft';
import { saveRouteAction } from '../draft-actions';
import { OperationRows } from './_components/operation-rows';

export const metadata: Metadata = { title: 'Route' };

export default async function RoutePage({ params }: { readonly params: Promise<{ modelId: string }> }) {
  const { modelId } = await params;
  const [{ model, revision }, materials] = await Promise.all([loadDraft(modelId), db().then(listMaterialChoices)]);
  const { operations, anchors } = revision;
  const used = operations.map((operation) => operation.material);
  return (
    <DraftForm
      model={model}
      revision={revision}
      part="Route"
      lead="The steps in their order. A step may wait for any step above it: until it is done, or until its glue or coat is hard enough."
      action={saveRouteAction.bind(null, modelId, revision.id)}
    >
      <OperationRows
        adhesives={materialOptions(materials, ['adhesive', 'coating'], used)}
        anchors={anchors.map(({ id, name }) => ({ value: id, label: name }))}
        operations={operations.map((operation) => ({
          ref: operation.id,
          name: operation.name,
          kind: operation.kind,
          minutes: plainDecimals(operation.attendedMinutes),
          materialId: operation.material?.id ?? '',
          anchorIds: anchors
            .filter((anchor) => operation.anchorPositions.includes(anchor.position))
            .map((anchor) => anchor.id),
          caution: operation.caution,
          needs: operation.needs.map(({ operationId, wait }) => ({ after: operationId, wait })),
        }))}
      />
    </DraftForm>
  );
}
