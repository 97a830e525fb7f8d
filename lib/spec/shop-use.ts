import type { AdhesiveStrengthSheet } from '@/lib/materials/adhesive-strength-sheet';
import type { SpecAnchor, SpecMaterial, SpecModel } from '@/lib/spec/spec-model';
import { usableAnchor } from '@/lib/spec/usable';
import { waiverFor } from '@/lib/spec/waivers';

/** Bit, glue and depth that go with a wire. */
export interface WireWay {
  readonly bitDiameterMm: number;
  readonly adhesive: SpecMaterial<AdhesiveStrengthSheet>;
  readonly embedmentMm: number;
}

/** One anchor that is made in a way. */
export interface WireUse {
  readonly modelId: string;
  readonly modelName: string;
  readonly revisionLetter: string;
  readonly anchorId: string;
  readonly anchorName: string;
  readonly isWaived: boolean;
}

export interface WireWayUses {
  readonly way: WireWay;
  readonly uses: readonly WireUse[];
}

/** All that the shop does with one wire, its usual way first: a row of the consistency matrix. Plain data. */
export interface WireHabit {
  readonly wireMaterialId: string;
  readonly wireName: string;
  readonly wireDiameterMm: number;
  readonly ways: readonly WireWayUses[];
}

/** An anchor's way with its wire; null unless it is a twisted wire with all of it entered. */
export function wayOf({ kind, bitDiameterMm, adhesive, embedmentMm }: SpecAnchor): WireWay | null {
  if (kind !== 'twisted-wire' || bitDiameterMm === null || adhesive === null || embedmentMm === null) return null;
  return { bitDiameterMm, adhesive, embedmentMm };
}

/** Whether two ways are the same to a twentieth of a millimetre. */
export function isSameWay(a: WireWay, b: WireWay): boolean {
  return wayKey(a) === wayKey(b);
}

/** A wire by material and hundredths of a millimetre; null: the anchor has none. */
export function wireKey({ wire, wireDiameterMm }: SpecAnchor): string | null {
  return wire === null || wireDiameterMm === null ? null : keyOf(wire.materialId, wireDiameterMm);
}

export function wayKey({ bitDiameterMm, adhesive, embedmentMm }: WireWay): string {
  return `${Math.round(bitDiameterMm * 20)} ${Math.round(embedmentMm * 20)} ${adhesive.materialId}`;
}

function keyOf(materialId: string, diameterMm: number): string {
  return `${materialId}\n${Math.round(diameterMm * 100)}`;
}

interface GatheredHabit extends Omit<WireHabit, 'ways'> {
  readonly ways: Map<string, { readonly way: WireWay; readonly uses: WireUse[] }>;
}

/** What goes with which wire over the whole shop, by diameter. `models`: the revisions in use, one a model. */
export function wireHabits(models: readonly SpecModel[]): readonly WireHabit[] {
  const gathered = new Map<string, GatheredHabit>();
  for (const model of models) {
    for (const typed of model.anchors) gather(gathered, model, usableAnchor(typed));
  }
  return [...gathered.values()]
    .map((habit) => ({ ...habit, ways: [...habit.ways.values()].sort(byUse) }))
    .sort((a, b) => a.wireDiameterMm - b.wireDiameterMm || (a.wireMaterialId < b.wireMaterialId ? -1 : 1));
}

function gather(gathered: Map<string, GatheredHabit>, model: SpecModel, anchor: SpecAnchor): void {
  const way = wayOf(anchor);
  const key = wireKey(anchor);
  const { wire, wireDiameterMm } = anchor;
  if (way === null || key === null || wire === null || wireDiameterMm === null) return;
  let habit = gathered.get(key);
  if (habit === undefined) {
    habit = { wireMaterialId: wire.materialId, wireName: wire.name, wireDiameterMm, ways: new Map() };
    gathered.set(key, habit);
  }
  const ofWay = habit.ways.get(wayKey(way)) ?? { way, uses: [] };
  habit.ways.set(wayKey(way), ofWay);
  ofWay.uses.push({
    modelId: model.modelId,
    modelName: model.modelName,
    revisionLetter: model.revisionLetter,
    anchorId: anchor.anchorId,
    anchorName: anchor.name,
    isWaived: waiverFor(model, 'shop-consistency', anchor.anchorId) !== null,
  });
}

/** The usual way first: most anchors that are not waived, then by what it is, so that the models' order is no matter. */
function byUse(a: WireWayUses, b: WireWayUses): number {
  const votes = (of: WireWayUses) => of.uses.filter((use) => !use.isWaived).length;
  return votes(b) - votes(a) || (wayKey(a.way) < wayKey(b.way) ? -1 : 1);
}

/** Anchors of a wire that are made in one way, counted. */
interface Votes {
  readonly way: WireWay;
  readonly total: number;
  readonly byModel: ReadonlyMap<string, number>;
}

export interface UsualWay {
  readonly way: WireWay;
  /** Other anchors of the shop that are made so, waived ones left out. */
  readonly anchors: number;
}

/** What the shop does with its wires, asked anchor by anchor. */
export class ShopUse {
  private readonly byWire: ReadonlyMap<string, readonly Votes[]>;

  constructor(habits: readonly WireHabit[]) {
    this.byWire = new Map(
      habits.map((habit) => [keyOf(habit.wireMaterialId, habit.wireDiameterMm), habit.ways.map(votesOf)]),
    );
  }

  /** How the other models of the shop most often make an anchor of this wire; null: no other has it. */
  usualWay(modelId: string, anchor: SpecAnchor): UsualWay | null {
    const key = wireKey(anchor);
    let usual: UsualWay | null = null;
    for (const { way, total, byModel } of (key === null ? undefined : this.byWire.get(key)) ?? []) {
      const anchors = total - (byModel.get(modelId) ?? 0);
      if (anchors > (usual?.anchors ?? 0)) usual = { way, anchors };
    }
    return usual;
  }
}

function votesOf({ way, uses }: WireWayUses): Votes {
  const byModel = new Map<string, number>();
  let total = 0;
  for (const { modelId, isWaived } of uses) {
    if (isWaived) continue;
    total++;
    byModel.set(modelId, (byModel.get(modelId) ?? 0) + 1);
  }
  return { way, total, byModel };
}
