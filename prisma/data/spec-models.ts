import { holePlace } from '@/lib/geometry/drilled-hole';
import type { StrengthFigures, StrengthKind } from '@/lib/materials/strength-figures';
import { compareRevisionLetters } from '@/lib/spec/revision-letter';
import type { SpecAnchor, SpecMaterial, SpecModel, SpecWood } from '@/lib/spec/spec-model';
import type { DbReader } from '@/prisma/client';
import { listRevisions, type MaterialName, type Revision, type RevisionAnchor } from '@/prisma/data/revisions';
import type { StrengthShelf } from '@/prisma/data/strength-shelf';
import { listWaivers, type Waiver } from '@/prisma/data/waivers';

/** What a revision does not hold itself. */
export interface SpecSurroundings {
  readonly modelName: string;
  readonly shelf: StrengthShelf;
  /** Of this revision or of others too. */
  readonly waivers: readonly Waiver[];
}

/** A revision as the rules judge it. */
export function specModelOf(revision: Revision, { modelName, shelf, waivers }: SpecSurroundings): SpecModel {
  const { profile, lengthMm, lineLabelN, lineType, knotShare, dragShare, billLines } = revision;
  return {
    modelId: revision.modelId,
    modelName,
    revisionId: revision.id,
    revisionLetter: revision.letter,
    body: profile.length === 0 ? null : { stations: profile, lengthMm },
    wood: woodOf(revision, shelf),
    anchors: revision.anchors.map((anchor) => anchorOf(anchor, shelf)),
    // Lines of one label break at loads that differ by half, so a line of no known kind counts as not said.
    line:
      lineLabelN === null || lineType === null ? null : { labelN: lineLabelN, type: lineType, knotShare, dragShare },
    fishMassG: revision.fishMassG,
    bill:
      billLines.length === 0
        ? null
        : billLines.map(({ material, quantity, quantityUnit }) => ({
            materialId: material.id,
            quantity,
            quantityUnit,
          })),
    waivers: waivers.filter(({ revisionId, withdrawnAt }) => revisionId === revision.id && withdrawnAt === null),
  };
}

/** Revisions as the rules judge them, in the order of the ids; ids that name none are passed over. */
export async function listSpecModels(
  reader: DbReader,
  revisionIds: readonly string[],
  shelf: StrengthShelf,
): Promise<SpecModel[]> {
  const revisions = new Map((await listRevisions(reader, revisionIds)).map((revision) => [revision.id, revision]));
  const models = await reader.model.findMany({ select: { id: true, name: true } });
  const nameOf = new Map(models.map(({ id, name }) => [id, name]));
  const waiversOf = new Map<string, Waiver[]>(revisionIds.map((id) => [id, []]));
  for (const waiver of await listWaivers(reader, revisionIds)) waiversOf.get(waiver.revisionId)?.push(waiver);
  return revisionIds.flatMap((id) => {
    const revision = revisions.get(id);
    if (revision === undefined) return [];
    const modelName = nameOf.get(revision.modelId) ?? '';
    return [specModelOf(revision, { modelName, shelf, waivers: waiversOf.get(id) ?? [] })];
  });
}

/** Ids of the revisions in use: the newest of every model that is not archived. */
export async function listRevisionIdsInUse(reader: DbReader): Promise<string[]> {
  const models = await reader.model.findMany({
    where: { isArchived: false },
    select: { revisions: { select: { id: true, letter: true } } },
    orderBy: { name: 'asc' },
  });
  return models.flatMap(({ revisions }) => {
    const newest = revisions.toSorted((a, b) => compareRevisionLetters(b.letter, a.letter))[0];
    return newest === undefined ? [] : [newest.id];
  });
}

function woodOf({ wood, weighedDensityKgM3, moisturePercent }: Revision, shelf: StrengthShelf): SpecWood | null {
  const material = shelvedWood(wood, shelf);
  return material === null ? null : { ...material, weighedDensityKgM3, moisturePercent };
}

function anchorOf(anchor: RevisionAnchor, shelf: StrengthShelf): SpecAnchor {
  const { wire, adhesive, hook, splitRing, kind } = anchor;
  return {
    anchorId: anchor.id,
    name: anchor.name,
    role: anchor.role,
    kind,
    face: anchor.face,
    xMm: anchor.xMm,
    zMm: anchor.zMm,
    slantDeg: holePlace(anchor)?.slantDeg ?? null,
    loadAngleDeg: anchor.loadAngleDeg,
    wire: kind === 'screw-eye' ? null : shelvedWire(wire, shelf),
    wireDiameterMm: anchor.wireDiameterMm,
    twistPitchMm: anchor.twistPitchMm,
    eyeInsideMm: anchor.eyeInsideMm,
    isEyeClosed: anchor.isEyeClosed,
    bitDiameterMm: anchor.bitDiameterMm,
    drillDepthMm: anchor.drillDepthMm,
    embedmentMm: anchor.embedmentMm,
    adhesive: shelvedAdhesive(adhesive, shelf),
    screwEye: kind === 'screw-eye' ? shelvedScrewEye(wire, shelf) : null,
    hook: shelvedFitting(hook, shelf),
    splitRing: shelvedFitting(splitRing, shelf),
  };
}

/** A material that a revision names, with its sheet; null where none is named, or one of another kind. */
function shelved<Sheet>(
  name: MaterialName | null,
  shelf: StrengthShelf,
  kinds: readonly StrengthKind[],
  sheetOf: (figures: StrengthFigures) => Sheet | null,
): SpecMaterial<Sheet> | null {
  const material = name === null ? undefined : shelf.get(name.id);
  if (material === undefined || !kinds.includes(material.kind)) return null;
  return {
    materialId: material.id,
    name: material.name,
    sheet: material.figures === null ? null : sheetOf(material.figures),
  };
}

const shelvedWood = (name: MaterialName | null, shelf: StrengthShelf) =>
  shelved(name, shelf, ['wood'], (figures) => (figures.kind === 'wood' ? figures.sheet : null));

const shelvedWire = (name: MaterialName | null, shelf: StrengthShelf) =>
  shelved(name, shelf, ['wire'], (figures) => (figures.kind === 'wire' ? figures.sheet : null));

const shelvedAdhesive = (name: MaterialName | null, shelf: StrengthShelf) =>
  shelved(name, shelf, ['adhesive'], (figures) => (figures.kind === 'adhesive' ? figures.sheet : null));

const shelvedScrewEye = (name: MaterialName | null, shelf: StrengthShelf) =>
  shelved(name, shelf, ['screw-eye'], (figures) => (figures.kind === 'screw-eye' ? figures.sheet : null));

const shelvedFitting = (name: MaterialName | null, shelf: StrengthShelf) =>
  shelved(name, shelf, ['hook', 'split-ring'], (figures) =>
    figures.kind === 'hook' || figures.kind === 'split-ring' ? figures.sheet : null,
  );
