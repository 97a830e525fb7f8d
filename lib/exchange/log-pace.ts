import { Cells, fieldsOf } from './cells';
import { directionOf } from './merge-rows';
import type { ReadingLayout } from './reading-layout';
import type { LogPace } from './row-clock';
import { RowReader } from './row-reader';

/** Direction and usual step of a log from its first lines: under the layout's order of day and month, and the other. */
export function logPaces(lines: readonly string[], layout: ReadingLayout): { pace: LogPace; otherPace: LogPace } {
  const reader = new RowReader(layout);
  const cells = new Cells();
  const wall: number[] = [];
  const otherWall: number[] = [];
  for (const line of lines.slice(layout.linesBeforeRows)) {
    if (line.trim() === '') continue;
    cells.setFields(fieldsOf(line, layout.separator));
    if (reader.read(cells) !== null) continue;
    wall.push(reader.wallMs);
    otherWall.push(reader.otherWallMs);
  }
  return { pace: paceOf(wall), otherPace: paceOf(otherWall) };
}

function paceOf(wall: readonly number[]): LogPace {
  const known = Float64Array.from(wall.filter(Number.isFinite));
  const steps: number[] = [];
  for (let row = 1; row < known.length; row += 1) steps.push(Math.abs((known[row] ?? 0) - (known[row - 1] ?? 0)));
  const moved = steps.filter((step) => step > 0).sort((a, b) => a - b);
  return { direction: directionOf(known), stepMs: moved[(moved.length - 1) >> 1] ?? 0 };
}
