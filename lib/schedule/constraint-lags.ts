import { knownTerm, type ModelTerm, type ModelText, shiftedTerm } from '@/lib/schedule/constraint-text';
import { closingMinute, type Lag, type LagTable, openingMinute } from '@/lib/schedule/lag';

/** Minutes in which what lags are counted from may fall: a stretch of the clock in one session, or all there is. */
export interface Stretch {
  readonly least: number;
  readonly most: number;
}

/** A moment of a task that lags are counted from. */
export interface LagMoment {
  readonly term: ModelTerm;
  /** In order and apart; every minute that the moment may have is in one of them. */
  readonly stretches: readonly Stretch[];
}

/** Lags of a problem as constraints: a fixed one is added, one by table is looked up by when it is counted from. */
export class ModelLags {
  readonly #tables: ReadonlyMap<string, LagTable>;
  readonly #known = new Map<string, ModelTerm>();

  constructor(
    private readonly text: ModelText,
    tables: readonly LagTable[],
    /** A minute after everything. */
    private readonly lastMinute: number,
  ) {
    this.#tables = new Map(tables.map((table) => [table.id, table]));
  }

  /**
   * The minute at which what is counted from `moment` is sure to be over. Where the table does not reach that far it is
   * `otherwise`; null: then the moment must be earlier.
   */
  opening(lag: Lag, moment: LagMoment, otherwise: number | null): ModelTerm {
    if (lag.kind === 'fixed') return shiftedTerm(moment.term, lag.minutes);
    const table = this.#tableOf(lag.tableId);
    return this.#lookUp(`opens ${lag.tableId} ${otherwise}`, moment, () => {
      const pieces = this.#pieces(table, moment, Math.ceil).map(({ from, to, step }) => {
        const end = openingMinute(table, table.startMinute + step * table.stepMinutes);
        return { from, to, value: end ?? otherwise };
      });
      return this.#valueBy(table, moment, pieces);
    });
  }

  /** The last minute at which a window that runs from `moment` is sure to be open; `lastMinute` where it never closes. */
  closing(lag: Lag, moment: LagMoment): ModelTerm {
    const { term } = moment;
    if (lag.kind === 'fixed') return shiftedTerm(term, lag.minutes);
    const table = this.#tableOf(lag.tableId);
    return this.#lookUp(`closes ${lag.tableId}`, moment, () => {
      const pieces = this.#pieces(table, moment, Math.floor).map(({ from, to, step }) => {
        const end = closingMinute(table, table.startMinute + step * table.stepMinutes);
        return { from, to, value: Math.min(this.lastMinute, end ?? this.lastMinute) };
      });
      const end = this.#valueBy(table, moment, pieces);
      return this.text.later(term, end);
    });
  }

  #tableOf(id: string): LagTable {
    const table = this.#tables.get(id);
    if (table === undefined) throw new RangeError(`no table of lags has the id ${id}`);
    return table;
  }

  #lookUp(kind: string, { term }: LagMoment, make: () => ModelTerm): ModelTerm {
    const key = `${kind} ${term.name} ${term.added}`;
    const known = this.#known.get(key) ?? make();
    this.#known.set(key, known);
    return known;
  }

  /** The stretches cut where another entry of the table begins to hold. */
  #pieces({ startMinute, stepMinutes }: LagTable, { stretches }: LagMoment, round: (steps: number) => number) {
    const stepOf = (minute: number) => round((minute - startMinute) / stepMinutes);
    return stretches.flatMap(({ least, most }) => {
      const pieces: { from: number; to: number; step: number }[] = [];
      for (let minute = least; minute <= most; minute++) {
        const step = stepOf(minute);
        const last = pieces.at(-1);
        if (last?.step === step) last.to = minute;
        else pieces.push({ from: minute, to: minute, step });
      }
      return pieces;
    });
  }

  /** The value of the piece that the moment falls into; the moment is in none whose value is null. */
  #valueBy(
    { startMinute, stepMinutes }: LagTable,
    moment: LagMoment,
    pieces: readonly { readonly from: number; readonly to: number; readonly value: number | null }[],
  ): ModelTerm {
    const { text } = this;
    const open = pieces.flatMap(({ from, to, value }) => (value === null ? [] : [{ from, to, value }]));
    const [only] = open;
    if (only === undefined) {
      text.never();
      return knownTerm(this.lastMinute);
    }
    // Tables of the same steps share the question where the moment falls.
    const key = `piece ${startMinute % stepMinutes} ${stepMinutes} ${open.map(({ from, to }) => `${from}-${to}`)}`;
    const piece = this.#lookUp(key, moment, () => {
      const index = text.variable('q', 1, open.length);
      const froms = open.map(({ from }) => from);
      const lengths = open.map(({ from, to }) => to - from);
      const into = text.variable('r', 0, Math.max(...lengths));
      text.atMostZero([
        [1, into],
        [-1, text.entry(lengths, index)],
      ]);
      text.zero([
        [1, into],
        [1, text.entry(froms, index)],
        [-1, moment.term],
      ]);
      return index;
    });
    return text.entry(
      open.map(({ value }) => value),
      piece,
    );
  }
}
