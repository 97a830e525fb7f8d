import { Caution } from '@/app/_ui/caution';
import type { FormAction } from '@/app/_ui/form-state';
import { Card } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { Why } from '@/app/_ui/why';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { massWarnings } from '@/lib/cure/exotherm';
import { type CardMix, CUP_LOSS_G, type OperationCard, USABLE_SHARE } from '@/lib/prepare/preparation';
import { durationText } from '@/lib/units/format-duration';
import { MINUTE_MS } from '@/lib/units/instant';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { StoredPreparation } from '@/prisma/data/preparations';
import { jointLines } from './joint-lines';
import { OBSTACLE_WORDS } from './obstacle-words';
import { TickButton } from './tick-button';

export interface MixCardsProps {
  readonly card: OperationCard;
  readonly sheet: AdhesiveSheet | null;
  readonly stored: StoredPreparation;
  readonly anchorName: (anchorId: string) => string;
  /** Null: on paper, where nothing is pressed. */
  readonly action: FormAction | null;
}

/** The cups of one operation, each to be read at arm's length. */
export function MixCards({ card, sheet, stored, anchorName, action }: MixCardsProps) {
  if (card.obstacle !== null) {
    return (
      <p className="border-l-4 border-accent bg-accent-soft px-4 py-3">
        {OBSTACLE_WORDS[card.obstacle]} {card.anchorIds.map(anchorName).join(', ')}
      </p>
    );
  }
  const isHot = sheet !== null && card.mixes.some((mix) => massWarnings(sheet, mix.massG).length > 0);
  return (
    <div className="grid gap-4">
      {isHot && <Caution topic="heat" />}
      <ul className="grid gap-4 lg:grid-cols-2">
        {card.mixes.map((mix) => (
          <li key={mix.number} className="break-inside-avoid">
            <MixCardSheet {...{ card, mix, stored, anchorName, action }} />
          </li>
        ))}
      </ul>
    </div>
  );
}

type MixCardSheetProps = Omit<MixCardsProps, 'sheet'> & { readonly mix: CardMix };

function MixCardSheet({ card, mix, stored, anchorName, action }: MixCardSheetProps) {
  const parts =
    mix.partBG === 0
      ? [{ key: 'a', name: 'Pour', grams: mix.partAG }]
      : [
          { key: 'a', name: 'Resin A', grams: mix.partAG },
          { key: 'b', name: 'Hardener B', grams: mix.partBG },
        ];
  return (
    <Card className="grid gap-4">
      <h4 className="text-lg font-bold">Mix {mix.number}</h4>
      <div className="grid gap-4 sm:grid-cols-2">
        {parts.map(({ key, name, grams }) => {
          const item = `mix:${card.operationId}:${mix.number}:${key}`;
          const tick = stored.ticks.get(item);
          return (
            <div key={key} className="grid content-start gap-2">
              <p className="font-semibold">{name}</p>
              <p className="text-arm font-bold">
                {plainDecimals(grams)}
                <span className="text-2xl"> g</span>
              </p>
              {tick !== undefined && (
                <StatusMark status="done">Poured{tick.personName === null ? '' : `, ${tick.personName}`}</StatusMark>
              )}
              {action !== null && (
                <TickButton
                  action={action}
                  preparationId={stored.id}
                  item={item}
                  label={`Poured: ${name}, mix ${mix.number}`}
                  word="Poured"
                  isDone={tick !== undefined}
                />
              )}
            </div>
          );
        })}
      </div>
      <dl className="grid gap-1 text-sm">
        {jointLines(mix, anchorName).map(({ name, pieces }) => (
          <div key={name} className="flex flex-wrap gap-x-2">
            <dt className="font-semibold">{name}:</dt>
            <dd>{pieces}</dd>
          </div>
        ))}
      </dl>
      <p className="text-sm text-ink-soft">
        {plainDecimals(mix.massG)} g in the cup, {durationText(mix.busyMinutes * MINUTE_MS)} of work
        {mix.potLifeMinutes === null
          ? ''
          : `, pot life at least about ${durationText(Math.floor(mix.potLifeMinutes) * MINUTE_MS)}`}
        .
      </p>
      {action !== null && (
        <Why
          about={`mix ${mix.number}`}
          formula="Stirring and setting take no longer than the usable share of the pot life of this cup; grams are hole less wire, times waste, and what stays in the cup, rounded up to what the scale weighs well enough."
          inputs={[
            { label: 'A to B by mass', value: card.aPerB === null ? 'one part' : `${plainDecimals(card.aPerB)} : 1` },
            { label: 'Off by rounding', value: `${plainDecimals(mix.ratioError * 100)} %` },
            {
              label: 'Allowed, with the scale off by a step at each part',
              value: card.tolerance === null ? 'any' : `${plainDecimals(card.tolerance * 100)} %`,
            },
            { label: 'Waste', value: `${plainDecimals(card.waste)} times` },
            { label: 'Stays in the cup', value: `${CUP_LOSS_G} g` },
            { label: 'Usable share', value: `${USABLE_SHARE * 100} % of the lower value` },
          ]}
          source="Data sheet in Stock; waste and shares are common practice, no source"
        />
      )}
    </Card>
  );
}
