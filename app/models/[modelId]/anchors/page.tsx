import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { Caution } from '@/app/_ui/caution';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { DraftForm } from '../_components/draft-form';
import { loadDraft } from '../_components/load-draft';
import { saveAnchorsAction } from '../draft-actions';
import { AnchorRows } from './_components/anchor-rows';
import { anchorText, twistSign } from './_components/anchor-text';

export const metadata: Metadata = { title: 'Anchors' };

export default async function AnchorsPage({ params }: { readonly params: Promise<{ modelId: string }> }) {
  const { modelId } = await params;
  const [{ model, revision }, shop, materials] = await Promise.all([
    loadDraft(modelId),
    currentShop(),
    db().then(listMaterialChoices),
  ]);
  const { anchors } = revision;
  return (
    <DraftForm
      model={model}
      revision={revision}
      part="Anchors"
      lead="Every eye and hanger fixed in the body. What you do not know yet stays empty; it is never taken for zero."
      action={saveAnchorsAction.bind(null, modelId, revision.id)}
    >
      <Caution topic="wire" />
      <AnchorRows
        unit={lengthSign(shop.lengthUnit)}
        twistUnit={twistSign(shop.lengthUnit)}
        wires={materialOptions(
          materials,
          ['wire', 'screw-eye'],
          anchors.map((anchor) => anchor.wire),
        )}
        adhesives={materialOptions(
          materials,
          ['adhesive'],
          anchors.map((anchor) => anchor.adhesive),
        )}
        hooks={materialOptions(
          materials,
          ['hook'],
          anchors.map((anchor) => anchor.hook),
        )}
        splitRings={materialOptions(
          materials,
          ['split-ring'],
          anchors.map((anchor) => anchor.splitRing),
        )}
        anchors={anchors.map((anchor) => anchorText(anchor, shop))}
      />
    </DraftForm>
  );
}
