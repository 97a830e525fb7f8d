'use client';

import { memo, startTransition, useCallback, useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { FormAction } from '@/app/_ui/form-state';
import { Card } from '@/app/_ui/page';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { applyFix } from '@/lib/spec/apply-fix';
import { findingsOf } from '@/lib/spec/findings-of';
import { modelFacts } from '@/lib/spec/model-facts';
import { specContext } from '@/lib/spec/spec-context';
import type { SpecFix } from '@/lib/spec/spec-fix';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { AnchorChoice } from './anchor-choice';
import { AnchorFields } from './anchor-fields';
import { AnchorFigures } from './anchor-figures';
import { AnchorPlots } from './anchor-plots';
import { ChainView } from './chain-view';
import { FixList } from './fix-list';
import { FloatView } from './float-view';
import { LiveLine } from './live-line';
import { SaveBar } from './save-bar';
import { changeCount, rebased } from './trial';
import { TryoutDrawing } from './tryout-drawing';
import { bodyOf, dragSteps, type TryoutWorld } from './tryout-world';
import { Verdicts } from './verdicts';

export interface TryoutProps {
  readonly world: TryoutWorld;
  readonly action: FormAction;
}

// Drawn anew only when what they show has changed, not with every movement of the finger.
const Figures = memo(AnchorFigures);
const Found = memo(Verdicts);
const Plots = memo(AnchorPlots);
const Chain = memo(ChainView);
const Fixes = memo(FixList);
const Water = memo(FloatView);

/** The spec of one revision to be tried out: drag or type, see at once what it does to strength and findings. */
export default function Tryout({ world, action }: TryoutProps) {
  const { shop, units, ballast, seenAt } = world;
  const [trial, setTrial] = useTrial(world.model);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const contexts = useMemo(
    () => ({ quick: specContext(shop, { withFixes: false }), thorough: specContext(shop, { withFixes: true }) }),
    [shop],
  );
  // The drawing, what the anchor carries and the tally follow the finger at once; the rest as fast as the device can;
  // what asks for a search waits until the finger rests.
  const facts = useMemo(() => modelFacts(trial, contexts.quick), [trial, contexts]);
  const findings = useMemo(() => findingsOf(trial, contexts.quick), [trial, contexts]);
  const lateFacts = useDeferredValue(facts);
  const lateFindings = useDeferredValue(findings);
  const restingFacts = useSettled(facts);
  const withFixes = useMemo(() => findingsOf(restingFacts.model, contexts.thorough), [restingFacts, contexts]);
  const body = useMemo(() => bodyOf(trial), [trial]);
  const steps = dragSteps(units.lengthUnit, shop.settings.incrementMm);
  const selected = trial.anchors.find(({ anchorId }) => anchorId === chosenId) ?? trial.anchors[0];
  const isSelected = ({ anchor }: AnchorFacts) => anchor.anchorId === selected?.anchorId;
  const selectedFacts = facts.anchors.find(isSelected);
  const late = lateFacts.anchors.find(isSelected);
  const apply = useCallback((fix: SpecFix) => setTrial((now) => applyFix(now, fix)), [setTrial]);
  const change = (anchor: SpecAnchor) =>
    setTrial((now) => ({
      ...now,
      anchors: now.anchors.map((old) => (old.anchorId === anchor.anchorId ? anchor : old)),
    }));

  if (body === null) return <p>Measure the body first: the drawing and the wood round each anchor come from it.</p>;
  if (selected === undefined) return <p>No anchors yet. Enter the line tie and every hanger first.</p>;
  return (
    <div className="grid gap-6">
      <Card>
        <p className="mb-2 text-sm text-ink-soft">
          Choose an anchor, then drag: the round grip is its deep end, the square one its mouth, the diamond the way it
          is pulled. Arrow keys move them too. The dashed tube is the wood it should have round it; the dotted circle
          the least it has.
        </p>
        <TryoutDrawing
          body={body}
          anchors={trial.anchors}
          selectedId={selected.anchorId}
          steps={steps}
          lengthUnit={units.lengthUnit}
          onSelect={setChosenId}
          onChange={change}
        />
        {selectedFacts !== undefined && (
          <LiveLine facts={selectedFacts} model={facts} findings={findings} units={units} />
        )}
      </Card>
      <AnchorChoice anchors={trial.anchors} findings={findings} selectedId={selected.anchorId} onSelect={setChosenId} />
      <div className="grid gap-6 lg:grid-cols-2">
        <Card className="grid content-start gap-5">
          <h3 className="text-lg font-bold">{selected.name}</h3>
          <AnchorFields
            key={selected.anchorId}
            anchor={selected}
            body={body}
            steps={steps}
            lengthUnit={units.lengthUnit}
            onChange={change}
          />
          {late !== undefined && <Figures facts={late} model={lateFacts} units={units} />}
        </Card>
        <Card className="grid content-start gap-5">
          <h3 className="text-lg font-bold">What is found</h3>
          <Found findings={lateFindings} units={units} />
        </Card>
      </div>
      {late !== undefined && <Plots facts={late} model={lateFacts} units={units} />}
      <div className="grid gap-6 lg:grid-cols-2">
        {late !== undefined && (
          <Card className="grid content-start gap-4">
            <h3 className="text-lg font-bold">Which link goes first</h3>
            <Chain facts={late} model={lateFacts} units={units} />
          </Card>
        )}
        <Card className="grid content-start gap-4">
          <h3 className="text-lg font-bold">What would make it hold</h3>
          <Fixes findings={withFixes} units={units} onApply={apply} />
        </Card>
      </div>
      <Card className="grid gap-4">
        <h3 className="text-lg font-bold">In the water</h3>
        <Water model={restingFacts} ballast={ballast} units={units} />
      </Card>
      <SaveBar
        saved={world.model}
        tried={trial}
        count={changeCount(world.model, trial)}
        seenAt={seenAt}
        action={action}
        onReset={() => setTrial(() => world.model)}
      />
    </div>
  );
}

type SetTrial = (change: (now: SpecModel) => SpecModel) => void;

/** The spec as it is tried; when what is saved changes, what was tried stays on top of it. */
function useTrial(saved: SpecModel): readonly [SpecModel, SetTrial] {
  const [state, setState] = useState({ saved, tried: saved });
  const current = state.saved === saved ? state : { saved, tried: rebased(state.saved, state.tried, saved) };
  if (current !== state) setState(current);
  const set = useCallback<SetTrial>((change) => setState((now) => ({ ...now, tried: change(now.tried) })), []);
  return [current.tried, set];
}

/** How long nothing must change until what costs more is worked out, ms. */
const SETTLES_AFTER_MS = 200;

/** The last value that stayed for a while. */
function useSettled<Value>(value: Value): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => startTransition(() => setSettled(value)), SETTLES_AFTER_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
