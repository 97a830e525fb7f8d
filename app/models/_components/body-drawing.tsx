import { area, line } from 'd3-shape';
import { anchorLines } from '@/lib/geometry/anchor-lines';
import { type Body, bodyFromProfile } from '@/lib/geometry/body';
import type { BodyProfile, HalfSize } from '@/lib/geometry/body-profile';
import { holePlace } from '@/lib/geometry/drilled-hole';
import { lengthText } from '@/lib/units/format-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';
import type { RevisionAnchor } from '@/prisma/data/revisions';

export interface BodyDrawingProps {
  readonly lengthMm: number;
  readonly profile: BodyProfile;
  readonly anchors: readonly RevisionAnchor[];
  readonly lengthUnit: LengthUnit;
}

/** Room round the body for eyes and numbers, mm. */
const MARGIN_MM = 9;
/** Radius of a drawn eye, mm: a sign, not a measure. */
const EYE_MM = 1.8;
/** Length of a load's line, mm: a direction, not a size. */
const LOAD_MM = 6;

/** The body from the side and from above, both to one scale, straight lines between the stations as measured. */
export function BodyDrawing({ lengthMm, profile, anchors, lengthUnit }: BodyDrawingProps) {
  const check = bodyFromProfile(profile, null);
  const body = check.ok ? check.body : null;
  const highest = Math.max(...profile.map((station) => station.halfHeightMm));
  const widest = Math.max(...profile.map((station) => station.halfWidthMm));
  const sideY = MARGIN_MM + highest;
  const topY = sideY + highest + MARGIN_MM + widest + 4;
  const height = topY + widest + 13;
  const size = `${lengthText(lengthMm, lengthUnit)} long, ${lengthText(highest * 2, lengthUnit)} high, ${lengthText(widest * 2, lengthUnit)} wide`;
  return (
    <svg
      viewBox={`${-MARGIN_MM} 0 ${lengthMm + 2 * MARGIN_MM} ${height}`}
      role="img"
      aria-label={`Side view and top view to scale: ${size}, ${anchors.length} anchors.`}
      className="h-auto max-h-[28rem] w-full"
    >
      <g transform={`translate(0 ${sideY})`}>
        <Outline profile={profile} size="halfHeightMm" />
        {body !== null && anchors.map((anchor) => <Anchor key={anchor.id} anchor={anchor} body={body} />)}
      </g>
      <g transform={`translate(0 ${topY})`}>
        <Outline profile={profile} size="halfWidthMm" />
        {anchors.map((anchor) =>
          anchor.xMm === null ? null : (
            <circle key={anchor.id} cx={anchor.xMm} r={EYE_MM / 2} className="fill-accent" />
          ),
        )}
      </g>
      <ScaleBar y={topY + widest + 4} lengthMm={lengthMm} lengthUnit={lengthUnit} />
    </svg>
  );
}

function Outline({ profile, size }: { readonly profile: BodyProfile; readonly size: HalfSize }) {
  const shape = area<BodyProfile[number]>()
    .x((station) => station.xMm)
    .y0((station) => station[size])
    .y1((station) => -station[size]);
  const axis = line<BodyProfile[number]>()
    .x((station) => station.xMm)
    .y(() => 0);
  return (
    <>
      <path
        d={shape([...profile]) ?? ''}
        className="fill-chart-fill stroke-ink"
        strokeWidth={0.45}
        strokeLinejoin="round"
      />
      <path d={axis([...profile]) ?? ''} className="stroke-line-strong" strokeWidth={0.25} strokeDasharray="2 1" />
      {profile.map((station) => (
        <path
          key={station.xMm}
          d={`M${station.xMm} ${-station[size]}V${station[size]}`}
          className="stroke-line-strong"
          strokeWidth={0.15}
        />
      ))}
    </>
  );
}

/** Shank, eye and direction of the load of an anchor, where its place was entered. */
function Anchor({ anchor, body }: { readonly anchor: RevisionAnchor; readonly body: Body }) {
  const lines = anchorLines(body, { ...anchor, place: holePlace(anchor) });
  if (lines === null) return null;
  const { entry, end, eye, load } = lines;
  const tip = load === null ? null : { x: eye.centre.x + load.x * LOAD_MM, z: eye.centre.z + load.z * LOAD_MM };
  return (
    <g className="fill-none stroke-accent" strokeWidth={0.8} strokeLinecap="round">
      {anchor.kind === 'through-wire' ? (
        <path d={`M${body.noseMm} 0H${body.tailMm}`} strokeDasharray="2.4 1.2" />
      ) : (
        <path d={`M${entry.x} ${-entry.z}L${end.x} ${-end.z}`} />
      )}
      {tip !== null && (
        <path d={`M${eye.centre.x} ${-eye.centre.z}L${tip.x} ${-tip.z}`} className="stroke-ink" strokeWidth={0.4} />
      )}
      <path d={`M${entry.x} ${-entry.z}L${eye.centre.x} ${-eye.centre.z}`} />
      <circle cx={eye.centre.x} cy={-eye.centre.z} r={EYE_MM} className="fill-sheet" />
    </g>
  );
}

function ScaleBar({
  y,
  lengthMm,
  lengthUnit,
}: {
  readonly y: number;
  readonly lengthMm: number;
  readonly lengthUnit: LengthUnit;
}) {
  const stepMm = lengthUnit === 'inch' ? 25.4 : lengthMm > 40 ? 20 : 10;
  const steps = Math.max(1, Math.floor(lengthMm / stepMm));
  return (
    <g className="stroke-ink" strokeWidth={0.35}>
      <path d={`M0 ${y}H${steps * stepMm}`} />
      {Array.from({ length: steps + 1 }, (_, step) => {
        const x = step * stepMm;
        return <path key={x} d={`M${x} ${y - 1}v2`} />;
      })}
      <text x={0} y={y + 5.5} className="fill-ink stroke-none" fontSize={Math.max(2.6, lengthMm * 0.042)}>
        {lengthText(steps * stepMm, lengthUnit)} from the nose
      </text>
    </g>
  );
}
