/** What the import page shows of a job: all in words, so that the browser needs neither zones nor units. */
export interface ImportView {
  readonly id: string;
  readonly fileName: string;
  readonly stage: 'receiving' | 'reading' | 'asks' | 'ready' | 'unreadable' | 'writing' | 'done' | 'failed';
  /** What is going on, or what came of it, in a sentence or two. */
  readonly message: string;
  /** Share of the present step that is done, 0 to 1; null where it is not known. */
  readonly progress: number | null;
  readonly preview: PreviewView | null;
  readonly questions: readonly QuestionView[];
  /** What is wrong with a field of the last try to take it in, by its name. */
  readonly fieldErrors: Readonly<Record<string, string>>;
  /** First lines of a file that could not be read, or instants at which another reading is kept. */
  readonly lines: readonly string[];
}

/** A thing to answer, as a choice or a text. */
export interface QuestionView {
  readonly name: AnswerName;
  readonly label: string;
  readonly hint: string;
  /** Empty: a text is to be written. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export type AnswerName = 'dayOrder' | 'unit' | 'decimal' | 'temperatureColumn' | 'firstYear' | 'clock' | 'timeZone';

export interface PreviewView {
  readonly understood: readonly { readonly label: string; readonly value: string }[];
  readonly counts: readonly { readonly label: string; readonly value: string }[];
  readonly firstRows: readonly RowView[];
  readonly refusedBy: readonly { readonly reason: string; readonly count: number }[];
  readonly refused: readonly { readonly line: number; readonly reason: string; readonly text: string }[];
  readonly notes: readonly string[];
  /** What can be read differently, each with its present value. */
  readonly settings: readonly (QuestionView & { readonly value: string })[];
}

interface RowView {
  readonly line: number;
  readonly text: string;
  readonly at: string;
  readonly temperature: string;
}

/** What a request to a job is answered with when it was refused. */
export interface ImportRefusal {
  readonly ok: false;
  readonly message: string;
  /** What is wrong with a field, by its name. */
  readonly fieldErrors?: Readonly<Record<string, string>>;
  /** Whether the job is not there any more. */
  readonly isGone?: boolean;
}
