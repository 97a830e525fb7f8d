import type { MaterialKind } from '@/lib/contracts/material-forms';
import type { StockUnit } from '@/lib/stock/ledger';

/** What a kind of material is usually counted in, until the shop says otherwise. */
export function usualStockUnit(kind: MaterialKind): StockUnit {
  switch (kind) {
    case 'adhesive':
    case 'coating':
      return 'g';
    case 'wood':
    case 'wire':
      return 'mm';
    case 'hook':
    case 'split-ring':
    case 'screw-eye':
    case 'ballast':
    case 'other':
      return 'pieces';
  }
}
