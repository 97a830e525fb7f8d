import { Why } from '@/app/_ui/why';
import { figureSourceText } from '@/app/stock/_components/words';
import type { FormulaInput } from '@/lib/materials/formula-card';
import type { Finding } from '@/lib/spec/finding';
import { quantityText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { ruleTitle } from './rule-title';

/** Formula, inputs, sources and assumptions behind a finding. */
export function FindingWhy({ finding, units }: { readonly finding: Finding; readonly units: UnitChoice }) {
  const { figures, working, formula, source, assumptions, subject } = finding;
  const card = working?.card ?? null;
  const all = [...assumptions, ...(card?.assumptions ?? [])];
  return (
    <Why
      about={`${ruleTitle(finding.ruleId)}, ${subject.name}`}
      formula={
        <>
          {formula}
          {card !== null && (
            <>
              <br />
              {card.title}: {card.formula}
            </>
          )}
        </>
      }
      inputs={[
        ...figures.map(({ name, quantity }) => ({ label: name, value: quantityText(quantity, units) })),
        ...(working?.inputs ?? []).map((input) => inputLine(input, units)),
      ]}
      source={
        <>
          {figureSourceText(source)}
          {card !== null && (
            <>
              <br />
              {figureSourceText(card.source)}
            </>
          )}
        </>
      }
      assumption={all.length === 0 ? undefined : all.join('. ')}
      uncertainty={card === null || card.validity === '' ? undefined : `Good for: ${card.validity}`}
    />
  );
}

function inputLine({ symbol, name, quantity, source }: FormulaInput, units: UnitChoice) {
  return {
    label: symbol === '' ? name : `${name} (${symbol})`,
    value: `${quantityText(quantity, units)}. ${figureSourceText(source)}`,
  };
}
