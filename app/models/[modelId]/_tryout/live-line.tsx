import { tallyText } from '@/app/models/_components/finding-status';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { Finding } from '@/lib/spec/finding';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface LiveLineProps {
  readonly facts: AnchorFacts;
  readonly model: ModelFacts;
  readonly findings: readonly Finding[];
  readonly units: UnitChoice;
}

/** Under the drawing, in sight while a finger is on it: what the chosen anchor carries now, and the tally. */
export function LiveLine({ facts, model, findings, units }: LiveLineProps) {
  const { anchor } = facts;
  const { strength } = facts.of;
  const force = (loadN: number) => forceText(loadN, units.forceUnit);
  const atAngle = strength?.atAngle;
  const needed = model.demand === null ? null : model.context.settings.requiredFactor * model.demand.governing.loadN;
  return (
    <p data-live-line className="mt-2 flex flex-wrap gap-x-5 gap-y-1 border-t border-line pt-2">
      <span>
        <strong>{anchor.name}</strong>
        {anchor.embedmentMm !== null && `, ${lengthText(anchor.embedmentMm, units.lengthUnit)} deep`}:{' '}
        {atAngle?.kind === 'estimate' ? (
          <>
            carries <strong>{force(atAngle.lowerN)}</strong> (lower value) at {anchor.loadAngleDeg ?? 0}°
          </>
        ) : (
          'no estimate'
        )}
        {needed !== null && <>, must hold {force(needed)}</>}
      </span>
      <span>In all: {tallyText(findings)}</span>
    </p>
  );
}
