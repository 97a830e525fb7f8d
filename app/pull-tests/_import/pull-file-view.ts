/** What a file of pulls came to, as the browser shows it before and after it is taken in. Free of server code. */
export interface PullFileLine {
  readonly line: number;
  readonly text: string;
  readonly words: string;
}

export interface PullFileQuestion {
  readonly name: 'loadUnit' | 'depthUnit' | 'dayOrder';
  readonly label: string;
  readonly example: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export type PullFileView =
  | { readonly state: 'refused'; readonly message: string; readonly firstLines: readonly string[] }
  | { readonly state: 'asks'; readonly questions: readonly PullFileQuestion[]; readonly firstLines: readonly string[] }
  | {
      readonly state: 'preview' | 'done';
      readonly headings: readonly string[];
      readonly fresh: readonly PullFileLine[];
      readonly added: number;
      readonly known: number;
      readonly empty: number;
      readonly refused: readonly PullFileLine[];
      readonly repeated: number;
    };
