import type { Body, BodyCheck } from '@/lib/geometry/body';
import { type ResolvedWood, resolveWood, type WoodRefusal } from '@/lib/materials/resolved-wood';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { anchorMechanics, mechanicsKey } from '@/lib/spec/anchor-mechanics';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import { positiveOrNull, usableAnchor, usableLine } from '@/lib/spec/usable';
import { type Demand, demand } from '@/lib/strength/demand';
import type { FishingLine } from '@/lib/strength/fishing-line';

/** Everything the rules ask about a model, worked out once. */
export interface ModelFacts {
  readonly model: SpecModel;
  readonly context: SpecContext;
  readonly body: Body | null;
  /** Why the profile is no body. */
  readonly bodyRefusal: Exclude<BodyCheck, { ok: true }> | null;
  readonly wood: ResolvedWood | null;
  readonly woodRefusal: WoodRefusal | null;
  readonly line: FishingLine | null;
  /** Null: no fish is lifted. */
  readonly fishMassG: number | null;
  /** Null without a line. */
  readonly demand: Demand | null;
  readonly anchors: readonly AnchorFacts[];
}

/** The facts of one revision. Never throws: what cannot be used counts as not entered. */
export function modelFacts(model: SpecModel, context: SpecContext): ModelFacts {
  const { body, refusal, serial } = context.bodies.of(model.modelId, model.body);
  const wood = woodKey(model.wood, context);
  const resolution = context.woodMemo.of(wood, () => woodOf(model));
  const resolvedWood = resolution?.ok ? resolution.wood : null;
  const around = { wood: model.wood, body, resolvedWood };
  const line = usableLine(model.line);
  const fishMassG = positiveOrNull(model.fishMassG);
  return {
    model,
    context,
    body,
    bodyRefusal: refusal,
    wood: resolvedWood,
    woodRefusal: resolution?.ok === false ? resolution.code : null,
    line,
    fishMassG,
    demand: line === null ? null : demand(line, fishMassG, context.settings.demand),
    anchors: model.anchors.map((typed) => {
      const anchor = usableAnchor(typed);
      const key = `${serial} ${wood} ${mechanicsKey(anchor, context.numbers)}`;
      return { anchor, of: context.anchorMemo.of(key, () => anchorMechanics(anchor, around, context)) };
    }),
  };
}

function woodKey(wood: SpecModel['wood'], { numbers }: SpecContext): string {
  if (wood === null) return '';
  return `${wood.materialId} ${numbers.of(wood.sheet)} ${wood.weighedDensityKgM3} ${wood.moisturePercent}`;
}

function woodOf({ wood }: SpecModel) {
  if (wood === null || wood.sheet === null) return null;
  return resolveWood(wood.sheet, wood);
}
