/**
 * Where a figure or a formula comes from, shown beside it wherever it is used.
 *
 * `published`: read in the document named. `from-memory`: of the document named, not re-read. `derived`: computed from
 * such. `chosen`: ours, the text says why. `data-sheet`: the maker of the product says so. `own`: the shop's own
 * figure; whatever a shop enters without naming a source is its own.
 */
export interface FigureSource {
  readonly kind: 'data-sheet' | 'published' | 'common-practice' | 'from-memory' | 'derived' | 'chosen' | 'own';
  readonly text: string;
}

export const published = (text: string): FigureSource => ({ kind: 'published', text });
export const fromMemory = (text: string): FigureSource => ({ kind: 'from-memory', text });
export const derived = (text: string): FigureSource => ({ kind: 'derived', text });
export const chosen = (text: string): FigureSource => ({ kind: 'chosen', text });

/** The source of a figure that a shop entered without naming one. */
export const OWN_FIGURE: FigureSource = { kind: 'own', text: "The shop's own figure, no source given" };

/** A figure with its source. */
export interface SourcedFigure {
  readonly value: number;
  readonly source: FigureSource;
}
