import { cutList, type StockLength } from '@/lib/bom/cut-list';
import { throughWireLength, twistedEyeLength } from '@/lib/bom/developed-length';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { AnchorKind } from '@/lib/geometry/anchor';
import { coatVolumeMm3, glueMassG, glueRoundShank } from '@/lib/mixing/glue-need';
import { mixedDensity } from '@/lib/mixing/mass-ratio';
import { COMMON_WASTE, shopWaste, type Waste } from '@/lib/mixing/waste';
import { mixCard } from '@/lib/prepare/mix-card';
import {
  CUT_STEP_MM,
  END_TRIM_MM,
  type OperationCard,
  type Preparation,
  type PrepareChoices,
  type WasteKind,
  type WeighedCard,
  type WireCut,
} from '@/lib/prepare/preparation';

/** An anchor as far as its glue and its wire go; null: nobody has said. */
export interface PreparedAnchor {
  readonly id: string;
  readonly kind: AnchorKind;
  readonly wireMaterialId: string | null;
  readonly wireDiameterMm: number | null;
  readonly twistPitchMm: number | null;
  readonly eyeInsideMm: number | null;
  readonly bitDiameterMm: number | null;
  readonly drillDepthMm: number | null;
  readonly embedmentMm: number | null;
}

/** What the bill says of a glue, for all that it does on a piece. */
export interface BillCover {
  /** Null: the bill does not say. */
  readonly perPieceG: number | null;
  /** Anchors that other operations set with the same glue: theirs is part of what the bill says. */
  readonly setsAnchorIds: readonly string[];
  /** Operations without anchors that share the rest alike, this one included. */
  readonly shares: number;
}

/** A glue-up or a coat that is still to be done. */
export interface OpenOperation {
  readonly id: string;
  readonly kind: 'glue' | 'coat';
  readonly materialId: string | null;
  /** Null: no data sheet is entered. */
  readonly sheet: AdhesiveSheet | null;
  /** Film over the whole body, or a glue that sets no anchor, of which the bill says how much a piece takes, g. */
  readonly cover: 'film' | BillCover;
  /** Joints not set yet, or pieces not coated yet (no anchor). */
  readonly open: readonly { readonly piece: number; readonly anchorId: string | null }[];
}

export interface PrepareInput {
  readonly anchors: readonly PreparedAnchor[];
  readonly operations: readonly OpenOperation[];
  /** Of the body, mm^2; null where it has no profile yet. */
  readonly surfaceMm2: number | null;
  readonly bodyLengthMm: number;
  /** Lengths of each wire in stock. */
  readonly lengths: ReadonlyMap<string, readonly StockLength[]>;
  /** What the shop weighed back before. */
  readonly weighed: readonly WeighedCard[];
}

/** Density where the sheet has none for its parts, g/mL. From memory: mixed epoxies run from 1.08 to 1.15. */
const COMMON_DENSITY = 1.12;

/** Mixes with doses for every open glue-up and coat, and the cut list of every wire. Nothing missing is guessed. */
export function prepareBatch(input: PrepareInput, choices: PrepareChoices): Preparation {
  const cards = input.operations
    .filter(({ open }) => open.length > 0)
    .map((operation) => card(operation, input, choices));
  return { choices, cards, ...wireCuts(input, choices), weighed: [] };
}

function card(operation: OpenOperation, input: PrepareInput, choices: PrepareChoices): OperationCard {
  const { id: operationId, materialId, sheet, kind } = operation;
  const wasteKind: WasteKind = kind === 'coat' ? 'coat' : 'joint';
  const own = ownWaste(input, wasteKind);
  const waste = own.factor;
  const wasteCount = own.basis === 'own' ? own.count : 0;
  const none = {
    ...{ operationId, materialId, aPerB: null, tolerance: null, mixes: [], anchorIds: [] },
    ...{ waste, wasteKind, wasteCount, netG: 0 },
  };
  const byBill = { ...none, waste: 1, wasteKind: null, wasteCount: 0 };
  if (materialId === null) return { ...none, obstacle: 'no-material' };
  if (sheet === null) return { ...none, obstacle: 'no-sheet' };
  const density = mixedDensity(sheet) ?? COMMON_DENSITY;
  if (kind === 'coat' || operation.open.every(({ anchorId }) => anchorId === null)) {
    if (operation.cover !== 'film') {
      const { perPieceG, setsAnchorIds, shares } = operation.cover;
      if (perPieceG === null) return { ...byBill, obstacle: 'no-bill-line' };
      const joints = jointMasses(setsAnchorIds, input.anchors, density, ownWaste(input, 'joint').factor);
      if (joints.unknown.size > 0) return { ...none, anchorIds: [...joints.unknown], obstacle: 'anchor-figures' };
      const restG = perPieceG - [...joints.massByAnchor.values()].reduce((sum, own) => sum + own, 0);
      if (restG <= 0) return { ...byBill, obstacle: 'no-bill-line' };
      const uses = operation.open.map((use) => ({ ...use, massG: restG / shares }));
      return { ...byBill, ...mixCard(sheet, uses, choices, choices.secondsPerJoint) };
    }
    if (input.surfaceMm2 === null) return { ...none, obstacle: 'no-body' };
    const massG = glueMassG(coatVolumeMm3(input.surfaceMm2, choices.filmMm), density, waste);
    return {
      ...none,
      netG: (massG * operation.open.length) / waste,
      ...mixCard(
        sheet,
        operation.open.map((use) => ({ ...use, massG })),
        choices,
        choices.secondsPerCoat,
      ),
    };
  }
  const anchorIds = operation.open.flatMap(({ anchorId }) => anchorId ?? []);
  const { massByAnchor, unknown } = jointMasses(anchorIds, input.anchors, density, waste);
  if (unknown.size > 0) return { ...none, anchorIds: [...unknown], obstacle: 'anchor-figures' };
  const uses = operation.open.map((use) => ({ ...use, massG: massByAnchor.get(use.anchorId ?? '') ?? 0 }));
  const netG = uses.reduce((sum, { massG }) => sum + massG, 0) / waste;
  return { ...none, netG, ...mixCard(sheet, uses, choices, choices.secondsPerJoint) };
}

function ownWaste({ weighed }: PrepareInput, wasteKind: WasteKind): Waste {
  return shopWaste(
    weighed.filter(({ kind }) => kind === wasteKind),
    COMMON_WASTE[wasteKind],
  );
}

/** Glue of each joint with its waste, g, and the anchors of which it cannot be told. */
function jointMasses(
  anchorIds: readonly string[],
  anchors: readonly PreparedAnchor[],
  density: number,
  waste: number,
): { massByAnchor: Map<string, number>; unknown: Set<string> } {
  const massByAnchor = new Map<string, number>();
  const unknown = new Set<string>();
  for (const anchorId of new Set(anchorIds)) {
    const anchor = anchors.find(({ id }) => id === anchorId);
    const volume = anchor === undefined ? null : glueVolume(anchor);
    if (volume === null) unknown.add(anchorId);
    else massByAnchor.set(anchorId, glueMassG(volume, density, waste));
  }
  return { massByAnchor, unknown };
}

/** Glue of one joint without waste, mm^3: round the shank, and what fills the hole below it. */
function glueVolume(anchor: PreparedAnchor): number | null {
  const { kind, wireDiameterMm, bitDiameterMm, drillDepthMm, embedmentMm, twistPitchMm } = anchor;
  if (!(isSize(wireDiameterMm) && isSize(bitDiameterMm) && isSize(embedmentMm))) return null;
  if (kind === 'twisted-wire' && !isSize(twistPitchMm)) return null;
  const pitchMm = kind === 'twisted-wire' ? twistPitchMm : null;
  const need = glueRoundShank({ holeDiameterMm: bitDiameterMm, embedmentMm, wireDiameterMm, pitchMm });
  if (!need.ok) return null;
  return need.netMm3 + 0.25 * Math.PI * bitDiameterMm ** 2 * Math.max(0, (drillDepthMm ?? 0) - embedmentMm);
}

function wireCuts(input: PrepareInput, choices: PrepareChoices): Pick<Preparation, 'cuts' | 'wireUnknown'> {
  const wanted = new Map<string, { anchorId: string; cutMm: number; count: number }[]>();
  const wireUnknown: string[] = [];
  const through = input.anchors.filter(({ kind }) => kind === 'through-wire');
  for (const anchor of input.anchors) {
    // One wire serves all anchors of a through-wire: it is counted with the first.
    if (anchor.kind === 'screw-eye' || (anchor.kind === 'through-wire' && anchor !== through[0])) continue;
    const count = new Set(
      input.operations.flatMap(({ open }) =>
        open.filter(({ anchorId }) => anchorId === anchor.id).map(({ piece }) => piece),
      ),
    ).size;
    if (count === 0) continue;
    const lengthMm =
      anchor.kind === 'twisted-wire' ? eyeWire(anchor, choices) : throughWire(through, input.bodyLengthMm, choices);
    if (lengthMm === null || anchor.wireMaterialId === null) {
      wireUnknown.push(anchor.id);
      continue;
    }
    const cutMm = Math.ceil(lengthMm / CUT_STEP_MM - 1e-9) * CUT_STEP_MM;
    wanted.set(anchor.wireMaterialId, [
      ...(wanted.get(anchor.wireMaterialId) ?? []),
      { anchorId: anchor.id, cutMm, count },
    ]);
  }
  const cuts = [...wanted].map(([materialId, wires]): WireCut => {
    const pieces = wires.map(({ anchorId, cutMm, count }) => ({ id: anchorId, lengthMm: cutMm, count }));
    const settings = { kerfMm: choices.kerfMm, endTrimMm: END_TRIM_MM, reuseMm: choices.reuseMm, buyMm: null };
    const list = cutList(inRods(input.lengths.get(materialId) ?? [], choices.rodMm), pieces, settings);
    const none = { materialId, wires, bars: [], isProven: false, leastMm: 0, missingMm: 0 };
    if (list.ok) return { ...none, bars: list.bars, isProven: list.isProven, leastMm: list.leastMm, obstacle: null };
    return { ...none, obstacle: list.code, missingMm: list.code === 'not-enough' ? list.missingMm : 0 };
  });
  return { cuts, wireUnknown };
}

/** A bundle as its rods, and what is over of it as one length. */
function inRods(lots: readonly StockLength[], rodMm: number | null): StockLength[] {
  if (rodMm === null) return [...lots];
  return lots.flatMap(({ id, lengthMm }) => {
    const count = Math.floor(lengthMm / rodMm + 1e-9);
    const restMm = lengthMm - count * rodMm;
    return [
      ...(restMm >= 1 ? [{ id, lengthMm: restMm, count: 1 }] : []),
      ...(count > 0 ? [{ id, lengthMm: rodMm, count }] : []),
    ];
  });
}

function eyeWire(
  { wireDiameterMm, twistPitchMm, embedmentMm, eyeInsideMm }: PreparedAnchor,
  { loopDeg, gripMm }: PrepareChoices,
): number | null {
  if (!(isSize(wireDiameterMm) && isSize(twistPitchMm) && isSize(embedmentMm) && isSize(eyeInsideMm))) return null;
  const length = twistedEyeLength({
    wireDiameterMm,
    pitchMm: twistPitchMm,
    shankMm: embedmentMm,
    eyeInsideMm,
    loopDeg,
    tailsMm: 0,
    trimMm: gripMm,
  });
  return length.ok ? length.cutMm : null;
}

function throughWire(
  anchors: readonly PreparedAnchor[],
  runMm: number,
  { loopDeg, gripMm, wrapTurns }: PrepareChoices,
): number | null {
  const wireDiameterMm = anchors[0]?.wireDiameterMm ?? null;
  if (!isSize(wireDiameterMm) || !isSize(runMm)) return null;
  const eyes = anchors.flatMap(({ eyeInsideMm }, index) =>
    isSize(eyeInsideMm)
      ? [
          {
            insideMm: eyeInsideMm,
            loopDeg,
            wrapTurns: index === 0 || index === anchors.length - 1 ? wrapTurns : 0,
          },
        ]
      : [],
  );
  if (eyes.length < anchors.length) return null;
  return throughWireLength({ wireDiameterMm, runMm, eyes, tailsMm: 0, trimMm: gripMm }).cutMm;
}

function isSize(size: number | null): size is number {
  return size !== null && size > 0 && Number.isFinite(size);
}
