import type { Body, BodyCheck } from '@/lib/geometry/body';
import { type ResolvedWood, resolveWood, type WoodRefusal } from '@/lib/materials/resolved-wood';
import { type AnchorFacts, anchorFacts } from '@/lib/spec/anchor-facts';
import { bodyFacts, bodyKey } from '@/lib/spec/body-facts';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import { positiveOrNull, usableLine } from '@/lib/spec/usable';
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
  /** Null without a line. */
  readonly demand: Demand | null;
  readonly anchors: readonly AnchorFacts[];
}

/** The facts of one revision. Never throws: what cannot be used counts as not entered. */
export function modelFacts(model: SpecModel, context: SpecContext): ModelFacts {
  const key = bodyKey(model.body);
  const { body, refusal } = context.bodyMemo.of(key, () => bodyFacts(model.body, key));
  const resolution = woodOf(model);
  const wood = resolution?.ok === true ? resolution.wood : null;
  const line = usableLine(model.line);
  const around = { model, body, wood };
  const surroundings = `${key}${JSON.stringify(model.wood)}`;
  return {
    model,
    context,
    body,
    bodyRefusal: refusal,
    wood,
    woodRefusal: resolution?.ok === false ? resolution.code : null,
    line,
    demand: line === null ? null : demand(line, positiveOrNull(model.fishMassG), context.settings.demand),
    anchors: model.anchors.map((anchor) =>
      context.anchorMemo.of(`${surroundings}${JSON.stringify(anchor)}`, () => anchorFacts(anchor, around, context)),
    ),
  };
}

function woodOf({ wood }: SpecModel) {
  if (wood === null || wood.sheet === null) return null;
  return resolveWood(wood.sheet, wood);
}
