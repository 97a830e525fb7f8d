'use client';

import { useWidth } from '@/app/_ui/use-width';
import { AnchorFromSide, AnchorFromTop, LOAD_ARROW_PX } from '@/app/models/_drawing/anchor-mark';
import { BodyOutline, ScaleRule } from '@/app/models/_drawing/body-shape-views';
import { type DrawingFrame, drawingFrame, planePoint, sidePoint } from '@/app/models/_drawing/drawing-frame';
import { GripHandle } from '@/app/models/_drawing/grip-handle';
import { type AnchorLines, anchorLines } from '@/lib/geometry/anchor-lines';
import type { Body } from '@/lib/geometry/body';
import type { DragSteps } from '@/lib/geometry/hole-drag';
import type { SpecAnchor } from '@/lib/spec/spec-model';
import { lengthText } from '@/lib/units/format-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';
import { drawnAnchor } from './drawn';
import { dragged, type Grip, isGripKey, nudged } from './edits';

export interface TryoutDrawingProps {
  readonly body: Body;
  readonly anchors: readonly SpecAnchor[];
  readonly selectedId: string | null;
  readonly steps: DragSteps;
  readonly lengthUnit: LengthUnit;
  readonly onSelect: (anchorId: string) => void;
  readonly onChange: (anchor: SpecAnchor) => void;
}

/** Side view and top view to one scale; the chosen anchor can be taken by its mouth, its deep end and its load. */
export function TryoutDrawing(props: TryoutDrawingProps) {
  const { body, anchors, selectedId, lengthUnit, onSelect } = props;
  const [holder, widthPx] = useWidth<HTMLDivElement>(720);
  const frame = drawingFrame(body, widthPx);
  const marks = anchors.flatMap((anchor) => {
    const drawn = drawnAnchor(anchor);
    const lines = anchorLines(body, drawn);
    return lines === null ? [] : [{ anchor, drawn, lines, isSelected: anchor.anchorId === selectedId }];
  });
  // The chosen one is drawn last, over the others.
  const ordered = [...marks].sort((a, b) => Number(a.isSelected) - Number(b.isSelected));
  const selected = marks.find(({ isSelected }) => isSelected);
  return (
    <div ref={holder} className="min-w-0">
      <svg width={widthPx} height={frame.heightPx} className="block max-w-full overflow-visible text-xs select-none">
        <title>Body from the side and from above, to scale</title>
        <text x={2} y={12} className="fill-ink-soft">
          from the side
        </text>
        <text x={2} y={frame.topY - (frame.topY - frame.sideY) / 2 + 12} className="fill-ink-soft">
          from above
        </text>
        <BodyOutline body={body} size="halfHeightMm" frame={frame} />
        <BodyOutline body={body} size="halfWidthMm" frame={frame} />
        {ordered.map(({ anchor, drawn, lines, isSelected }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the buttons under the drawing say which are there
          <g
            key={anchor.anchorId}
            onClick={() => onSelect(anchor.anchorId)}
            className={isSelected ? '' : 'cursor-pointer'}
          >
            <AnchorFromSide anchor={drawn} lines={lines} body={body} frame={frame} isSelected={isSelected} />
            <AnchorFromTop anchor={drawn} lines={lines} body={body} frame={frame} isSelected={isSelected} />
            {!isSelected && <Reach lines={lines} frame={frame} />}
          </g>
        ))}
        {selected !== undefined && <Grips {...props} anchor={selected.anchor} lines={selected.lines} frame={frame} />}
        <ScaleRule body={body} frame={frame} unit={lengthUnit} />
      </svg>
    </div>
  );
}

/** What a finger can hit of an anchor that is not chosen: its eye with room round it. */
function Reach({ lines, frame }: { readonly lines: AnchorLines; readonly frame: DrawingFrame }) {
  const at = sidePoint(frame, lines.eye.centre);
  return <circle cx={at.x} cy={at.y} r="22" className="fill-transparent" />;
}

interface GripsProps extends TryoutDrawingProps {
  readonly anchor: SpecAnchor;
  readonly lines: AnchorLines;
  readonly frame: DrawingFrame;
}

function Grips({ anchor, lines, frame, body, steps, lengthUnit, onChange }: GripsProps) {
  const { entry, end, eye, load, path } = lines;
  const length = (mm: number) => lengthText(mm, lengthUnit);
  const keyOn = (grip: Grip) => (key: string) => {
    if (!isGripKey(key)) return false;
    onChange(nudged(anchor, body, grip, key, steps));
    return true;
  };
  const dragOn = (grip: Grip) => (to: { readonly x: number; readonly y: number }) => {
    const point = planePoint(frame, to);
    const from = grip === 'load' ? { x: point.x - eye.centre.x, z: point.z - eye.centre.z } : point;
    onChange(dragged(anchor, body, grip, from, steps));
  };
  const eyeAt = sidePoint(frame, eye.centre);
  const place = anchor.face === 'nose' || anchor.face === 'tail' ? (anchor.zMm ?? 0) : (anchor.xMm ?? 0);
  return (
    <>
      {load !== null && (
        <GripHandle
          at={{ x: eyeAt.x + load.x * LOAD_ARROW_PX, y: eyeAt.y - load.z * LOAD_ARROW_PX }}
          label={`Direction of the load on ${anchor.name}`}
          value={anchor.loadAngleDeg ?? 0}
          valueMax={90}
          valueText={`${anchor.loadAngleDeg ?? 0}° from the shank`}
          onDrag={dragOn('load')}
          onKey={keyOn('load')}
        >
          <path d="M0 -8L8 0L0 8L-8 0Z" className="fill-sheet stroke-ink" strokeWidth="2.25" />
        </GripHandle>
      )}
      <GripHandle
        at={sidePoint(frame, entry)}
        label={`Place of ${anchor.name}`}
        value={place}
        valueMax={body.tailMm}
        valueText={
          anchor.face === 'nose' || anchor.face === 'tail'
            ? `${length(place)} above the middle line`
            : `${length(place)} from the nose`
        }
        onDrag={dragOn('mouth')}
        onKey={keyOn('mouth')}
      >
        <rect x="-7" y="-7" width="14" height="14" className="fill-sheet stroke-ink" strokeWidth="2.25" />
      </GripHandle>
      {anchor.kind !== 'through-wire' && (
        <GripHandle
          at={sidePoint(frame, end)}
          label={`Depth and lean of ${anchor.name}`}
          value={anchor.embedmentMm ?? 0}
          valueMax={path.throughMm}
          valueText={`${length(anchor.embedmentMm ?? 0)} deep, leaning ${anchor.slantDeg ?? 0}°`}
          onDrag={dragOn('shank')}
          onKey={keyOn('shank')}
        >
          <circle r="8.5" className="fill-sheet stroke-ink" strokeWidth="2.25" />
          <circle r="3" className="fill-ink" />
        </GripHandle>
      )}
    </>
  );
}
