'use client';

import { useMemo, useState } from 'react';
import { Card } from '@/app/_ui/page';
import { AnglePlotView } from '@/app/models/_plots/angle-plot-view';
import { DepthPlotView } from '@/app/models/_plots/depth-plot-view';
import { PublishedList } from '@/app/models/_plots/published-list';
import { coverProfile } from '@/lib/geometry/cover';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { FAILURE_WORDS, NO_ESTIMATE_WORDS } from '@/lib/spec/reason-words';
import { anglePlot } from '@/lib/strength/angle-plot';
import { type DepthPlot, depthPlot } from '@/lib/strength/depth-plot';
import { lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface AnchorPlotsProps {
  readonly facts: AnchorFacts;
  readonly model: ModelFacts;
  readonly units: UnitChoice;
}

/** Deeper than any depth that is drawn, mm. */
const REACH_MM = 50;

/** Strength of an anchor over its depth and over the angle of its load. */
export function AnchorPlots({ facts, model, units }: AnchorPlotsProps) {
  const { anchor } = facts;
  const { design, path } = facts.of;
  const { body, context, demand } = model;
  const [areOthersShown, setOthersShown] = useState(true);
  const settings = context.settings.strength;
  const byDepth = useMemo(() => {
    if (design?.kind !== 'twisted-wire') return null;
    const cover = body === null || path === null ? design.cover : coverProfile(body, path, REACH_MM);
    return depthPlot({ ...design, cover }, settings);
  }, [design, body, path, settings]);
  const byAngle = useMemo(() => (design === null ? null : anglePlot(design, settings)), [design, settings]);
  if (byAngle === null) return null;
  const demandN = demand?.governing.loadN ?? null;
  const neededN = demandN === null ? null : context.settings.requiredFactor * demandN;
  return (
    <div className="grid gap-6 lg:grid-cols-2">
      {byDepth !== null && (
        <Card className="grid content-start gap-3">
          <h3 className="text-lg font-bold">Strength over depth, pulled straight</h3>
          <DepthPlotView
            plot={byDepth}
            embedmentMm={anchor.embedmentMm}
            demandN={demandN}
            neededN={neededN}
            areOthersShown={areOthersShown}
            units={units}
          />
          <p className="text-sm text-ink-soft">
            Thick: what all but one in twenty carry. Thin: the middle. {aslantWords(byDepth, anchor.loadAngleDeg)}
            {silenceWords(byDepth, units)}
          </p>
          <label className="flex min-h-touch items-center gap-3">
            <input
              type="checkbox"
              checked={areOthersShown}
              onChange={(event) => setOthersShown(event.currentTarget.checked)}
              className="size-6 shrink-0 accent-ink"
            />
            Other people's formulas beside it, numbered
          </label>
          {areOthersShown && <PublishedList plot={byDepth} embedmentMm={anchor.embedmentMm} units={units} />}
        </Card>
      )}
      <Card className="grid content-start gap-3">
        <h3 className="text-lg font-bold">Strength over the angle of the load</h3>
        <AnglePlotView plot={byAngle} loadAngleDeg={anchor.loadAngleDeg} neededN={neededN} units={units} />
        <p className="text-sm text-ink-soft">
          Lower values of every way: {byAngle.ways.map(({ way }) => FAILURE_WORDS[way]).join('; ')}. Bending and
          ovalling are no loss: it holds on.
        </p>
      </Card>
    </div>
  );
}

function aslantWords(plot: DepthPlot, loadAngleDeg: number | null): string {
  return plot.lowerAtAngle.length === 0 ? '' : `Dotted: the same pulled at ${loadAngleDeg}°. `;
}

/** Where nothing is said and why; stretches that touch are one. */
function silenceWords({ silent }: DepthPlot, units: UnitChoice): string {
  const length = (mm: number) => lengthText(mm, units.lengthUnit);
  const merged: { fromMm: number; toMm: number }[] = [];
  for (const { fromMm, toMm } of silent) {
    const last = merged.at(-1);
    if (last !== undefined && fromMm <= last.toMm) last.toMm = toMm;
    else merged.push({ fromMm, toMm });
  }
  const reasons = [...new Set(silent.flatMap((stretch) => stretch.reasons))].map((reason) => NO_ESTIMATE_WORDS[reason]);
  if (merged.length === 0) return '';
  const where = merged.map(({ fromMm, toMm }) => `${length(fromMm)} to ${length(toMm)}`).join(' and ');
  return `Hatched: no estimate from ${where}, where ${reasons.join('; or ')}.`;
}
