import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { usableAnchor } from '@/lib/spec/usable';
import { waiverFor } from '@/lib/spec/waivers';

/** Bit, glue and depth that go with a wire. */
export interface WireWay {
  readonly bitDiameterMm: number;
  readonly adhesiveMaterialId: string;
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

/** All that the shop does with one wire, its usual way first. */
export interface WireHabit {
  readonly wireMaterialId: string;
  readonly wireDiameterMm: number;
  readonly ways: readonly { readonly way: WireWay; readonly uses: readonly WireUse[] }[];
}

/** The consistency matrix of the whole shop: every wire, its ways, and which anchors are made so. */
export class ShopUse {
  private readonly byWire: ReadonlyMap<string, WireHabit>;

  /** `models`: the revisions in use, one a model. */
  constructor(models: readonly SpecModel[]) {
    this.byWire = habits(models);
  }

  /** Rows of the matrix, by diameter. */
  habits(): readonly WireHabit[] {
    return [...this.byWire.values()].sort((a, b) => a.wireDiameterMm - b.wireDiameterMm);
  }

  /** What the shop does with an anchor's wire; null for an anchor without wire, bit, glue or depth. */
  habitOf(anchor: SpecAnchor): WireHabit | null {
    const key = wireKey(anchor);
    return key === null ? null : (this.byWire.get(key) ?? null);
  }
}

/** An anchor's way with its wire; null unless it is a twisted wire with all of it entered. */
export function wayOf({ kind, bitDiameterMm, adhesive, embedmentMm }: SpecAnchor): WireWay | null {
  if (kind !== 'twisted-wire' || bitDiameterMm === null || adhesive === null || embedmentMm === null) return null;
  return { bitDiameterMm, adhesiveMaterialId: adhesive.materialId, embedmentMm };
}

/** Whether two ways are the same to a twentieth of a millimetre. */
export function isSameWay(a: WireWay, b: WireWay): boolean {
  return wayKey(a) === wayKey(b);
}

function wireKey({ wire, wireDiameterMm }: SpecAnchor): string | null {
  return wire === null || wireDiameterMm === null ? null : `${wire.materialId}\n${Math.round(wireDiameterMm * 100)}`;
}

function wayKey({ bitDiameterMm, adhesiveMaterialId, embedmentMm }: WireWay): string {
  return `${Math.round(bitDiameterMm * 20)} ${Math.round(embedmentMm * 20)} ${adhesiveMaterialId}`;
}

interface GatheredWay {
  readonly key: string;
  readonly way: WireWay;
  readonly uses: WireUse[];
}

function habits(models: readonly SpecModel[]): ReadonlyMap<string, WireHabit> {
  const gathered = new Map<
    string,
    { wireMaterialId: string; wireDiameterMm: number; ways: Map<string, GatheredWay> }
  >();
  for (const model of models) {
    for (const typed of model.anchors) {
      const anchor = usableAnchor(typed);
      const way = wayOf(anchor);
      const key = wireKey(anchor);
      if (way === null || key === null || anchor.wire === null || anchor.wireDiameterMm === null) continue;
      let ofWire = gathered.get(key);
      if (ofWire === undefined) {
        ofWire = { wireMaterialId: anchor.wire.materialId, wireDiameterMm: anchor.wireDiameterMm, ways: new Map() };
        gathered.set(key, ofWire);
      }
      const ofWay = wayKey(way);
      const there = ofWire.ways.get(ofWay) ?? { key: ofWay, way, uses: [] };
      ofWire.ways.set(ofWay, there);
      there.uses.push({
        modelId: model.modelId,
        modelName: model.modelName,
        revisionLetter: model.revisionLetter,
        anchorId: anchor.anchorId,
        anchorName: anchor.name,
        isWaived: waiverFor(model, 'shop-consistency', anchor.anchorId) !== null,
      });
    }
  }
  return new Map(
    [...gathered].map(([key, ofWire]) => [key, { ...ofWire, ways: [...ofWire.ways.values()].sort(byUse) }]),
  );
}

/** The usual way first: most anchors that are not waived, then by name so that the order never depends on the models'. */
function byUse(a: GatheredWay, b: GatheredWay): number {
  const votes = (of: GatheredWay) => of.uses.filter((use) => !use.isWaived).length;
  return votes(b) - votes(a) || (a.key < b.key ? -1 : 1);
}
