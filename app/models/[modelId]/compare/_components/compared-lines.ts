import { ANCHOR_KIND_WORDS, FACE_WORDS, LINE_TYPE_WORDS, ROLE_WORDS } from '@/app/models/_components/words';
import { type Quantity, type QuantityUnit, quantityText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Revision, RevisionAnchor } from '@/prisma/data/revisions';

/** One thing that two revisions are held against each other by, as text. */
export interface ComparedLine {
  readonly group: string;
  readonly what: string;
  readonly from: string;
  readonly to: string;
}

type TextOf<T> = readonly (readonly [what: string, text: (of: T, units: UnitChoice) => string])[];

const NOT_SAID = 'not said';

/** Body, line and anchors of two revisions, line by line; anchors by their names. */
export function comparedLines(from: Revision, to: Revision, units: UnitChoice): readonly ComparedLine[] {
  const body = BODY_TEXTS.map(([what, text]) => ({
    group: 'Body and line',
    what,
    from: text(from, units),
    to: text(to, units),
  }));
  const names = [...new Set([...from.anchors, ...to.anchors].map(({ name }) => name))];
  const anchors = names.flatMap((name) => {
    const before = from.anchors.find((anchor) => anchor.name === name);
    const after = to.anchors.find((anchor) => anchor.name === name);
    return ANCHOR_TEXTS.map(([what, text]) => ({
      group: name,
      what,
      from: before === undefined ? 'no such anchor' : text(before, units),
      to: after === undefined ? 'no such anchor' : text(after, units),
    }));
  });
  // What neither has is no line: a through-wire has no bit.
  return [...body, ...anchors].filter((line) => line.from !== NOT_SAID || line.to !== NOT_SAID);
}

function shown(value: number | null, unit: QuantityUnit, units: UnitChoice): string {
  const quantity: Quantity | null = value === null ? null : { value, unit };
  return quantity === null ? NOT_SAID : quantityText(quantity, units);
}

const BODY_TEXTS: TextOf<Revision> = [
  ['Wood', ({ wood }) => wood?.name ?? NOT_SAID],
  ['Density as weighed', ({ weighedDensityKgM3 }, units) => shown(weighedDensityKgM3, 'kg/m3', units)],
  ['Moisture', ({ moisturePercent }, units) => shown(moisturePercent, 'percent', units)],
  ['Length', ({ lengthMm }, units) => shown(lengthMm, 'mm', units)],
  [
    'Greatest height',
    ({ profile }, units) =>
      greatest(
        profile.map(({ halfHeightMm }) => halfHeightMm),
        units,
      ),
  ],
  [
    'Greatest width',
    ({ profile }, units) =>
      greatest(
        profile.map(({ halfWidthMm }) => halfWidthMm),
        units,
      ),
  ],
  ['Stations', ({ profile }) => String(profile.length)],
  ['Ballast', ({ ballast }, units) => ballastText(ballast, units)],
  ['Line', ({ lineLabelN }, units) => shown(lineLabelN, 'N', units)],
  ['Kind of line', ({ lineType }) => (lineType === null ? NOT_SAID : LINE_TYPE_WORDS[lineType])],
  ['Fish swung out', ({ fishMassG }, units) => (fishMassG === null ? 'none' : shown(fishMassG, 'g', units))],
];

const ANCHOR_TEXTS: TextOf<RevisionAnchor> = [
  ['Role and kind', ({ role, kind }) => `${ROLE_WORDS[role]}, ${ANCHOR_KIND_WORDS[kind]}`],
  ['Drilled from', ({ face }) => (face === null ? NOT_SAID : FACE_WORDS[face])],
  ['From the nose', ({ xMm }, units) => shown(xMm, 'mm', units)],
  ['Above the middle', ({ zMm }, units) => shown(zMm, 'mm', units)],
  ['Angle', ({ shankAngleDeg, leansTo }, units) => slant(shankAngleDeg, leansTo, units)],
  ['Load angle', ({ loadAngleDeg }, units) => shown(loadAngleDeg, 'deg', units)],
  ['Wire or screw eye', ({ wire }) => wire?.name ?? NOT_SAID],
  ['Wire diameter', ({ wireDiameterMm }, units) => shown(wireDiameterMm, 'wire-mm', units)],
  ['One turn of the twist', ({ twistPitchMm }, units) => shown(twistPitchMm, 'mm', units)],
  ['Eye inside', ({ eyeInsideMm }, units) => shown(eyeInsideMm, 'mm', units)],
  ['Eye', ({ isEyeClosed }) => (isEyeClosed === null ? NOT_SAID : isEyeClosed ? 'closed' : 'open')],
  ['Bit', ({ bitDiameterMm }, units) => shown(bitDiameterMm, 'mm', units)],
  ['Drilled', ({ drillDepthMm }, units) => shown(drillDepthMm, 'mm', units)],
  ['Embedment', ({ embedmentMm }, units) => shown(embedmentMm, 'mm', units)],
  ['Adhesive', ({ adhesive }) => adhesive?.name ?? NOT_SAID],
  ['Split ring', ({ splitRing }) => splitRing?.name ?? NOT_SAID],
  ['Hook', ({ hook }) => hook?.name ?? NOT_SAID],
];

function greatest(halves: readonly number[], units: UnitChoice): string {
  return halves.length === 0 ? 'not measured' : shown(2 * Math.max(...halves), 'mm', units);
}

function ballastText(ballast: Revision['ballast'], units: UnitChoice): string {
  if (ballast === null) return NOT_SAID;
  if (ballast.length === 0) return 'none';
  return ballast.map(({ metal, massG }) => `${shown(massG, 'g', units)} ${metal}`).join(', ');
}

function slant(angleDeg: number | null, leansTo: RevisionAnchor['leansTo'], units: UnitChoice): string {
  const angle = shown(angleDeg, 'deg', units);
  return leansTo === null ? angle : `${angle}, leans to the ${FACE_WORDS[leansTo]}`;
}
