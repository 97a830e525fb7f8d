import { FigureSourceFields } from '@/app/stock/_components/figure-source-fields';
import { FIGURE_WORDS } from '@/app/stock/_components/words';
import type { FigureName } from '@/lib/cure/adhesive-sheet';
import type { SheetText } from './sheet-text';

export interface OwnSourceProps {
  readonly figure: FigureName;
  readonly text: SheetText;
}

/** Where one figure of a data sheet comes from, when that is not the source named at the top. */
export function OwnSource({ figure, text }: OwnSourceProps) {
  return <FigureSourceFields figure={figure} label={FIGURE_WORDS[figure]} own={text.sources[figure]} />;
}
