import type { PreparePage } from '@/app/_server/prepare-page';
import { Caution } from '@/app/_ui/caution';
import type { FormAction } from '@/app/_ui/form-state';
import { Section } from '@/app/_ui/page';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { StoredPreparation } from '@/prisma/data/preparations';
import { CardWaste } from './card-waste';
import { CutBars } from './cut-bars';
import { MixCards } from './mix-cards';

export interface CardAndCutsProps {
  readonly loaded: PreparePage;
  readonly stored: StoredPreparation;
  readonly units: UnitChoice;
  /** Null: on paper, where nothing is pressed. */
  readonly action: FormAction | null;
  readonly weighAction: FormAction | null;
}

/** The mixes with their doses and the cut list, on the screen and on the traveler alike. */
export function CardAndCuts({ loaded, stored, units, action, weighAction }: CardAndCutsProps) {
  const { anchorName, operationName, materialName, lotCode, sheets } = loaded;
  const { cards, cuts, wireUnknown } = stored.body;
  return (
    <>
      <Section title="Mixes">
        <Caution topic="epoxy" />
        {cards.length === 0 && <p className="text-ink-soft">Every joint is set and every coat is on.</p>}
        {cards.map((card) => (
          <div key={card.operationId} className="grid gap-3">
            <h3 className="text-lg font-bold">
              {operationName(card.operationId)}
              {card.materialId === null ? '' : `, ${materialName(card.materialId)}`}
            </h3>
            <MixCards
              card={card}
              sheet={card.materialId === null ? null : (sheets.get(card.materialId) ?? null)}
              stored={stored}
              anchorName={anchorName}
              action={action}
            />
            <CardWaste {...{ card, stored }} action={weighAction} />
          </div>
        ))}
      </Section>
      <Section title="Cut list">
        {(cuts.length > 0 || wireUnknown.length > 0) && <Caution topic="wire" />}
        {wireUnknown.length > 0 && (
          <p className="border-l-4 border-accent bg-accent-soft px-4 py-3">
            How long the wire must be cannot be told for {wireUnknown.map(anchorName).join(', ')}: wire, diameter, turn
            of the twist, eye or depth is missing in the model, or the twist is steeper than two strands can lie.
          </p>
        )}
        {cuts.length === 0 && wireUnknown.length === 0 && <p className="text-ink-soft">No wire is to be cut.</p>}
        {cuts.map((cut) => (
          <div key={cut.materialId} className="grid gap-3">
            <h3 className="text-lg font-bold">{materialName(cut.materialId)}</h3>
            <CutBars {...{ cut, stored, units, anchorName, lotCode, action }} />
          </div>
        ))}
      </Section>
    </>
  );
}
