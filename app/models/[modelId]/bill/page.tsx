import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { MATERIAL_KINDS } from '@/lib/contracts/material-forms';
import { stockInput } from '@/lib/stock/stock-text';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { DraftForm } from '../_components/draft-form';
import { loadDraft } from '../_components/load-draft';
import { saveBillAction } from '../draft-actions';
import { BillRows } from './_components/bill-rows';

export const metadata: Metadata = { title: 'Bill' };

export default async function BillPage({ params }: { readonly params: Promise<{ modelId: string }> }) {
  const { modelId } = await params;
  const [{ model, revision }, shop, materials] = await Promise.all([
    loadDraft(modelId),
    currentShop(),
    db().then(listMaterialChoices),
  ]);
  const { billLines } = revision;
  return (
    <DraftForm
      model={model}
      revision={revision}
      part="Bill"
      lead="Quantities for one piece, with the waste you usually make."
      action={saveBillAction.bind(null, modelId, revision.id)}
    >
      <BillRows
        materials={materialOptions(
          materials,
          MATERIAL_KINDS,
          billLines.map((line) => line.material),
        )}
        units={[
          { value: 'pieces', label: 'pieces' },
          { value: 'mm', label: `length (${lengthSign(shop.lengthUnit)})` },
          { value: 'g', label: `mass (${shop.massUnit})` },
        ]}
        lines={billLines.map((line) => ({
          materialId: line.material.id,
          quantity: stockInput(line.quantity, line.quantityUnit, shop),
          unit: line.quantityUnit,
          note: line.note,
        }))}
      />
    </DraftForm>
  );
}
