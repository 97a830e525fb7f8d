import type { ReactNode } from 'react';
import { WorkingWhy } from '@/app/models/_components/working-why';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { INPUT_WORDS } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { FAILURE_WORDS, NO_ESTIMATE_WORDS } from '@/lib/spec/reason-words';
import type { DemandCaseName } from '@/lib/strength/demand';
import type { Estimate, NoEstimate } from '@/lib/strength/estimate';
import type { AnchorStrength, Governed } from '@/lib/strength/strength-result';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface AnchorFiguresProps {
  readonly facts: AnchorFacts;
  readonly model: ModelFacts;
  readonly units: UnitChoice;
}

const CASE_WORDS: { readonly [C in DemandCaseName]: string } = {
  fight: 'a fish running against the drag',
  snag: 'breaking off on a snag',
  lift: 'swinging the fish out',
};

/** What an anchor carries and what it must hold, every number with its "why?". */
export function AnchorFigures({ facts, model, units }: AnchorFiguresProps) {
  const { anchor } = facts;
  const { strength, missing } = facts.of;
  return (
    <dl className="grid gap-3">
      {strength === null ? (
        <Item term="No estimate yet">
          {missing.length === 0
            ? 'The hole cannot be where it is said to be.'
            : `Missing: ${missing.map((name) => INPUT_WORDS[name]).join(', ')}.`}
        </Item>
      ) : (
        <>
          <Item term="Pulled straight">
            <Load name="straight" strength={strength} load={strength.straight} units={units} />
          </Item>
          {(anchor.loadAngleDeg ?? 0) > 0 && (
            <Item term={`Pulled at ${anchor.loadAngleDeg}°`}>
              <Load name={`at ${anchor.loadAngleDeg}°`} strength={strength} load={strength.atAngle} units={units} />
            </Item>
          )}
          {strength.bendsAtAngle?.kind === 'estimate' && (
            <Item term="First bends, and holds on">
              <Range estimate={strength.bendsAtAngle} units={units} />
              <WorkingWhy about="of the first bending" working={strength.bendsAtAngle.working} units={units} />
            </Item>
          )}
          {strength.stretch !== null && (
            <Item term="Stretch of shank that carries">
              {lengthText(strength.stretch.fromMm, units.lengthUnit)} to{' '}
              {lengthText(strength.stretch.toMm, units.lengthUnit)} deep
            </Item>
          )}
        </>
      )}
      <Needed model={model} units={units} />
    </dl>
  );
}

function Item({ term, children }: { readonly term: string; readonly children: ReactNode }) {
  return (
    <div className="border-l-2 border-line-strong pl-3">
      <dt className="text-sm text-ink-soft">{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

interface RangeProps {
  readonly estimate: Pick<Estimate | Governed, 'medianN' | 'lowerN'>;
  readonly units: UnitChoice;
}

function Range({ estimate: { medianN, lowerN }, units }: RangeProps) {
  return (
    <>
      <strong>{forceText(lowerN, units.forceUnit)}</strong> lower value, about {forceText(medianN, units.forceUnit)} in
      the middle
    </>
  );
}

interface LoadProps {
  readonly name: string;
  readonly strength: AnchorStrength;
  readonly load: Governed | NoEstimate;
  readonly units: UnitChoice;
}

function Load({ name, strength, load, units }: LoadProps) {
  if (load.kind === 'no-estimate') {
    return <>No estimate: {load.reasons.map((reason) => NO_ESTIMATE_WORDS[reason]).join('; ')}.</>;
  }
  const way = strength.ways.find((one) => one.way === load.governs)?.result;
  return (
    <>
      <Range estimate={load} units={units} />, by {FAILURE_WORDS[load.governs]}
      {way?.kind === 'estimate' && (
        <WorkingWhy
          about={name}
          working={way.working}
          units={units}
          uncertainty={`Scatter of the logarithm ${way.logSd.toFixed(2)}: the lower value is the load that all but one in twenty such anchors carry, unless the shop set another share. An estimate, never a rating.`}
        />
      )}
    </>
  );
}

function Needed({ model, units }: { readonly model: ModelFacts; readonly units: UnitChoice }) {
  const { demand, context } = model;
  if (demand === null) return <Item term="Must hold">not known: say which line the model is made for</Item>;
  const { requiredFactor } = context.settings;
  const { governing } = demand;
  return (
    <Item term="Must hold, lower value">
      <strong>{forceText(requiredFactor * governing.loadN, units.forceUnit)}</strong>: {requiredFactor} ×{' '}
      {forceText(governing.loadN, units.forceUnit)} of {CASE_WORDS[governing.name]}
      <WorkingWhy about="of what it must hold" working={governing.working} units={units} />
    </Item>
  );
}
