/** What the import of a list last answered. */
export type StockImportState =
  | { readonly status: 'idle' }
  | { readonly status: 'refused'; readonly message: string }
  /** A day could be read two ways. */
  | { readonly status: 'asks'; readonly example: string }
  | {
      readonly status: 'preview';
      readonly lots: readonly {
        readonly line: number;
        readonly materialName: string;
        readonly code: string;
        readonly quantity: string;
        readonly expiresOn: string | null;
      }[];
      readonly newMaterials: readonly string[];
      readonly knownLines: readonly number[];
      readonly refused: readonly { readonly line: number; readonly reason: string; readonly text: string }[];
      readonly blankLines: number;
    }
  | { readonly status: 'done'; readonly lots: number; readonly materials: number };
