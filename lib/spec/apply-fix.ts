import type { SpecChange, SpecFix } from '@/lib/spec/spec-fix';
import type { SpecBillLine, SpecModel } from '@/lib/spec/spec-model';

/** The spec with a fix made to it; the model given stays as it is. A change to an anchor that is not there does nothing. */
export function applyFix(model: SpecModel, fix: Pick<SpecFix, 'changes'>): SpecModel {
  return fix.changes.reduce(applied, model);
}

function applied(model: SpecModel, change: SpecChange): SpecModel {
  switch (change.kind) {
    case 'anchor':
      return {
        ...model,
        anchors: model.anchors.map((anchor) =>
          anchor.anchorId === change.anchorId ? { ...anchor, ...change.set } : anchor,
        ),
      };
    case 'model':
      return { ...model, ...change.set };
    case 'bill':
      return { ...model, bill: withLine(model.bill ?? [], change.line) };
  }
}

/** One line in place of all that the bill has of the material. */
function withLine(bill: readonly SpecBillLine[], line: SpecBillLine): readonly SpecBillLine[] {
  const at = bill.findIndex(({ materialId }) => materialId === line.materialId);
  if (at < 0) return [...bill, line];
  return bill.flatMap((old, i) => (i === at ? [line] : old.materialId === line.materialId ? [] : [old]));
}
