'use client';

import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { FormAction } from '@/app/_ui/form-state';
import { Card } from '@/app/_ui/page';
import { applyFix } from '@/lib/spec/apply-fix';
import { findingsOf } from '@/lib/spec/findings-of';
import { modelFacts } from '@/lib/spec/model-facts';
import { specContext } from '@/lib/spec/spec-context';
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

/** The spec of one revision to be tried out: drag or type, see at once what it does to strength and findings. */
export default function Tryout({ world, action }: TryoutProps) {
  const { shop, units, ballast, seenAt } = world;
  const [trial, setTrial] = useTrial(world.model);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const contexts = useMemo(
    () => ({ quick: specContext(shop, { withFixes: false }), thorough: specContext(shop, { withFixes: true }) }),
    [shop],
  );
  // The drawing follows the finger at once; figures and plots follow as fast as the device can.
  const shown = useDeferredValue(trial);
  const settled = useSettled(trial);
  const facts = useMemo(() => modelFacts(shown, contexts.quick), [shown, contexts]);
  const findings = useMemo(() => findingsOf(shown, contexts.quick), [shown, contexts]);
  const withFixes = useMemo(() => findingsOf(settled, contexts.thorough), [settled, contexts]);
  const body = useMemo(() => bodyOf(trial), [trial]);
  const steps = dragSteps(units.lengthUnit, shop.settings.incrementMm);
  const selected = trial.anchors.find(({ anchorId }) => anchorId === chosenId) ?? trial.anchors[0];
  const selectedFacts = facts.anchors.find(({ anchor }) => anchor.anchorId === selected?.anchorId);
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
          {selectedFacts !== undefined && <AnchorFigures facts={selectedFacts} model={facts} units={units} />}
        </Card>
        <Card className="grid content-start gap-5">
          <h3 className="text-lg font-bold">What is found</h3>
          <Verdicts findings={findings} units={units} />
        </Card>
      </div>
      {selectedFacts !== undefined && <AnchorPlots facts={selectedFacts} model={facts} units={units} />}
      <div className="grid gap-6 lg:grid-cols-2">
        {selectedFacts !== undefined && (
          <Card className="grid content-start gap-4">
            <h3 className="text-lg font-bold">Which link goes first</h3>
            <ChainView facts={selectedFacts} model={facts} units={units} />
          </Card>
        )}
        <Card className="grid content-start gap-4">
          <h3 className="text-lg font-bold">What would make it hold</h3>
          <FixList findings={withFixes} units={units} onApply={(fix) => setTrial((now) => applyFix(now, fix))} />
        </Card>
      </div>
      <Card className="grid gap-4">
        <h3 className="text-lg font-bold">In the water</h3>
        <FloatView model={facts} ballast={ballast} units={units} />
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
  const set: SetTrial = (change) => setState((now) => ({ ...now, tried: change(now.tried) }));
  return [current.tried, set];
}

/** How long nothing must change until what costs more is worked out, ms. */
const SETTLES_AFTER_MS = 200;

/** The last value that stayed for a while. */
function useSettled<Value>(value: Value): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), SETTLES_AFTER_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
