import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { Caution } from '@/app/_ui/caution';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { diameterInput, lengthInput } from '@/lib/units/quantity-input';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { DraftForm } from '../_components/draft-form';
import { loadDraft } from '../_components/load-draft';
import { saveAnchorsAction } from '../draft-actions';
import { AnchorRows } from './_components/anchor-rows';

export const metadata: Metadata = { title: 'Anchors' };

export default async function AnchorsPage({ params }: { readonly params: Promise<{ modelId: string }> }) {
  const { modelId } = await params;
  const [{ model, revision }, shop, materials] = await Promise.all([
    loadDraft(modelId),
    currentShop(),
    db().then(listMaterialChoices),
  ]);
  const { anchors } = revision;
  const length = (mm: number | null) => (mm === null ? '' : lengthInput(mm, shop.lengthUnit));
  const diameter = (mm: number | null) => (mm === null ? '' : diameterInput(mm, shop.lengthUnit));
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
        anchors={anchors.map((anchor) => ({
          id: anchor.id,
          name: anchor.name,
          role: anchor.role,
          kind: anchor.kind,
          x: length(anchor.xMm),
          angle: anchor.shankAngleDeg === null ? '' : String(anchor.shankAngleDeg),
          wireMaterialId: anchor.wire?.id ?? '',
          wireDiameter: diameter(anchor.wireDiameterMm),
          bitDiameter: diameter(anchor.bitDiameterMm),
          drillDepth: length(anchor.drillDepthMm),
          embedment: length(anchor.embedmentMm),
          adhesiveMaterialId: anchor.adhesive?.id ?? '',
          hookMaterialId: anchor.hook?.id ?? '',
          splitRingMaterialId: anchor.splitRing?.id ?? '',
        }))}
      />
    </DraftForm>
  );
}
