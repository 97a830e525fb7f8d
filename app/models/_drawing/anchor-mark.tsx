import type { AnchorLines, DrawnAnchor, PlanePoint } from '@/lib/geometry/anchor-lines';
import type { Body } from '@/lib/geometry/body';
import { type DrawingFrame, sidePoint } from './drawing-frame';

export interface AnchorMarkProps {
  readonly anchor: DrawnAnchor;
  readonly lines: AnchorLines;
  readonly body: Body;
  readonly frame: DrawingFrame;
  readonly isSelected: boolean;
}

/** Wood that a shank is to have round it, in shank diameters from its axis. */
const FULL_COVER_DIAMETERS = 2.5;
/** Length of a load's arrow, px: it shows a direction, not a size. */
export const LOAD_ARROW_PX = 40;

/** An anchor from the side: hole, shank, eye, the direction it is pulled in, and for the chosen one its cover. */
export function AnchorFromSide({ anchor, lines, body, frame, isSelected }: AnchorMarkProps) {
  const { entry, end, bottom, eye, load, least, shankDiameterMm, path } = lines;
  const px = (point: PlanePoint) => sidePoint(frame, point);
  const at = (point: PlanePoint) => `${px(point).x} ${px(point).y}`;
  const holeWidth = Math.max(3, (anchor.bitDiameterMm ?? shankDiameterMm) * frame.pxPerMm);
  const eyeAt = px(eye.centre);
  return (
    <g className="fill-none">
      {isSelected && anchor.kind !== 'through-wire' && (
        <CoverTube from={px(entry)} to={px(end)} radiusPx={FULL_COVER_DIAMETERS * shankDiameterMm * frame.pxPerMm} />
      )}
      {bottom !== null && (
        <path d={`M${at(entry)}L${at(bottom)}`} className="stroke-well" strokeWidth={holeWidth} strokeLinecap="butt" />
      )}
      {bottom !== null && (
        <path d={`M${at(end)}L${at(bottom)}`} className="stroke-ink" strokeWidth={1} strokeDasharray="2 2" />
      )}
      {anchor.kind === 'through-wire' ? (
        <path
          d={`M${at(entry)}L${px({ x: body.noseMm, z: entry.z }).x} ${frame.sideY}H${px({ x: body.tailMm, z: 0 }).x}`}
          className="stroke-accent"
          strokeWidth="3"
          strokeDasharray="9 4"
        />
      ) : (
        <path
          d={`M${at(entry)}L${at(end)}`}
          className="stroke-accent"
          strokeWidth={Math.max(3, shankDiameterMm * frame.pxPerMm * 0.75)}
        />
      )}
      <path d={`M${at(entry)}L${eyeAt.x} ${eyeAt.y}`} className="stroke-accent" strokeWidth="3" />
      <circle
        cx={eyeAt.x}
        cy={eyeAt.y}
        r={Math.max(5, eye.radiusMm * frame.pxPerMm)}
        className="fill-sheet stroke-accent"
        strokeWidth="3"
      />
      {load !== null && <LoadArrow from={eyeAt} along={load} isStrong={isSelected} />}
      {isSelected && least !== null && least.coverMm > 0 && (
        <circle
          cx={px(least.at).x}
          cy={px(least.at).y}
          r={least.coverMm * frame.pxPerMm}
          className="stroke-ink"
          strokeWidth="1.25"
          strokeDasharray="1.5 3"
        />
      )}
      {!isSelected && path.throughMm > 0 && <title>{anchor.name}</title>}
    </g>
  );
}

/** The same anchor from above: the mouth of its hole, and the shank as far as it leans. */
export function AnchorFromTop({ lines, frame, isSelected, anchor }: AnchorMarkProps) {
  const { entry, end, shankDiameterMm } = lines;
  const x = (point: PlanePoint) => sidePoint(frame, point).x;
  const wide = Math.max(3, shankDiameterMm * frame.pxPerMm);
  return (
    <g className="fill-none">
      {isSelected && anchor.kind !== 'through-wire' && (
        <CoverTube
          from={{ x: x(entry), y: frame.topY }}
          to={{ x: x(end), y: frame.topY }}
          radiusPx={FULL_COVER_DIAMETERS * shankDiameterMm * frame.pxPerMm}
        />
      )}
      {anchor.kind !== 'through-wire' && (
        <path d={`M${x(entry)} ${frame.topY}H${x(end)}`} className="stroke-accent" strokeWidth={wide * 0.75} />
      )}
      <circle
        cx={x(entry)}
        cy={frame.topY}
        r={Math.max(3, wide / 2)}
        className="fill-sheet stroke-accent"
        strokeWidth="2"
      />
    </g>
  );
}

interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

/** The wood a shank is to have round it: a dashed tube with a round end. Where it leaves the outline, cover is thin. */
function CoverTube({
  from,
  to,
  radiusPx: r,
}: {
  readonly from: ScreenPoint;
  readonly to: ScreenPoint;
  readonly radiusPx: number;
}) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1) return null;
  const nx = (-(to.y - from.y) / length) * r;
  const ny = ((to.x - from.x) / length) * r;
  return (
    <path
      d={`M${from.x + nx} ${from.y + ny}L${to.x + nx} ${to.y + ny}A${r} ${r} 0 0 0 ${to.x - nx} ${to.y - ny}L${from.x - nx} ${from.y - ny}`}
      className="stroke-chart-a"
      strokeWidth="1.25"
      strokeDasharray="5 3"
    />
  );
}

interface LoadArrowProps {
  readonly from: ScreenPoint;
  readonly along: PlanePoint;
  readonly isStrong: boolean;
}

function LoadArrow({ from, along, isStrong }: LoadArrowProps) {
  const tip = { x: from.x + along.x * LOAD_ARROW_PX, y: from.y - along.z * LOAD_ARROW_PX };
  const turn = (Math.atan2(-along.z, along.x) * 180) / Math.PI;
  return (
    <g className="stroke-ink" strokeWidth={isStrong ? 2.25 : 1.25}>
      <path d={`M${from.x} ${from.y}L${tip.x} ${tip.y}`} />
      <path d="M-9 -5L0 0L-9 5" transform={`translate(${tip.x} ${tip.y}) rotate(${turn})`} strokeLinejoin="round" />
    </g>
  );
}
