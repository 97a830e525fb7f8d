import { ActionForm } from '@/app/_ui/action-form';
import { TextField } from '@/app/_ui/field';
import type { FormAction } from '@/app/_ui/form-state';
import { SubmitButton } from '@/app/_ui/submit-button';
import { WEIGHINGS_NEEDED } from '@/lib/mixing/waste';
import type { OperationCard } from '@/lib/prepare/preparation';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { StoredPreparation } from '@/prisma/data/preparations';

export interface CardWasteProps {
  readonly card: OperationCard;
  readonly stored: StoredPreparation;
  /** Null: on paper. */
  readonly action: FormAction | null;
}

/** Which waste a card counts with, and where what was left in its cups is written down. */
export function CardWaste({ card, stored, action }: CardWasteProps) {
  if (card.wasteKind === null || card.mixes.length === 0) return null;
  const times = `${plainDecimals(Math.round(card.waste * 100) / 100)} times what geometry asks for`;
  const what = card.wasteKind === 'joint' ? 'glue-ups' : 'coats';
  const weighed = stored.body.weighed.find(({ operationId }) => operationId === card.operationId);
  const mixedG = weighed?.mixedG ?? card.mixes.reduce((sum, { massG }) => sum + massG, 0);
  return (
    <div className="grid gap-3">
      <p className="text-sm text-ink-soft">
        {card.wasteCount === 0
          ? `Counted with ${times}, the usual figure: your own replaces it after ${WEIGHINGS_NEEDED} weighed ${what}.`
          : `Counted with ${times}, your own from ${card.wasteCount} weighed ${what}.`}
      </p>
      {action !== null && (
        <details className="print:hidden">
          <summary className="cursor-pointer">
            {weighed === undefined ? 'Weigh what is left' : `${plainDecimals(weighed.leftG)} g were left`}
          </summary>
          <ActionForm action={action} className="grid gap-3 pt-3">
            <input type="hidden" name="preparationId" value={stored.id} />
            <input type="hidden" name="operationId" value={card.operationId} />
            <TextField
              name="mixedG"
              label="Mixed for all of this card, g"
              inputMode="decimal"
              defaultValue={plainDecimals(Math.round(mixedG * 100) / 100)}
            />
            <TextField
              name="leftG"
              label="Left in cups and on sticks, g"
              inputMode="decimal"
              defaultValue={weighed === undefined ? '' : plainDecimals(weighed.leftG)}
              hint="When every joint or coat of this card is done. Glue left in bulk gets hot: let it cool outside first."
            />
            <div>
              <SubmitButton weight="plain">Keep the weighing</SubmitButton>
            </div>
          </ActionForm>
        </details>
      )}
    </div>
  );
}
