import { Why } from '@/app/_ui/why';
import { figureSourceText } from '@/app/stock/_components/words';
import type { Working } from '@/lib/materials/formula-card';
import { quantityText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface WorkingWhyProps {
  /** What the number is of: "why 53 N straight". */
  readonly about: string;
  readonly working: Working;
  readonly units: UnitChoice;
  readonly uncertainty?: string;
}

/** "Why?" of a number that a formula gave: formula, what went in with its source, assumptions. */
export function WorkingWhy({ about, working, units, uncertainty }: WorkingWhyProps) {
  const { card, inputs } = working;
  const assumptions = [...card.assumptions, ...(card.validity === '' ? [] : [`Good for: ${card.validity}`])];
  return (
    <Why
      about={about}
      formula={
        <>
          {card.title}
          <br />
          <code>{card.formula}</code>
        </>
      }
      inputs={inputs.map(({ symbol, name, quantity, source }) => ({
        label: `${symbol}: ${name}`,
        value: (
          <>
            <span className="font-semibold text-ink">{quantityText(quantity, units)}</span>, {figureSourceText(source)}
          </>
        ),
      }))}
      source={figureSourceText(card.source)}
      {...(assumptions.length === 0 ? {} : { assumption: assumptions.join('. ') })}
      {...(uncertainty === undefined ? {} : { uncertainty })}
    />
  );
}
