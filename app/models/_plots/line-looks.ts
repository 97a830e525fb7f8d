import type { LineLook } from './plot-frame';

/** Looks of the lines, the same in every plot: width and dash tell them apart, colour helps. */
export const LOWER_LOOK: LineLook = { className: 'stroke-ink', widthPx: 3 };
export const MEDIAN_LOOK: LineLook = { className: 'stroke-chart-a', widthPx: 1.75 };
export const ASLANT_LOOK: LineLook = { className: 'stroke-ink', widthPx: 2, dash: '2 3' };
export const NEEDED_LOOK: LineLook = { className: 'stroke-accent', widthPx: 2.25, dash: '9 4' };
export const DEMAND_LOOK: LineLook = { className: 'stroke-accent', widthPx: 1.25, dash: '2 3' };
export const WIRE_LOOK: LineLook = { className: 'stroke-chart-b', widthPx: 2, dash: '10 3 2 3' };
export const BENDS_LOOK: LineLook = { className: 'stroke-chart-a', widthPx: 2, dash: '5 3' };
export const PUBLISHED_LOOK: LineLook = { className: 'stroke-line-strong', widthPx: 1 };
