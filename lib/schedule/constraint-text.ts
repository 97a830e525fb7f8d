/** A number that the solver chooses, or one that is known: a variable by its name and what is added to it. */
export interface ModelTerm {
  /** null: the number is known. */
  readonly name: string | null;
  readonly added: number;
  readonly least: number;
  readonly most: number;
}

/** A number as a term. */
export function knownTerm(value: number): ModelTerm {
  return { name: null, added: value, least: value, most: value };
}

/** A term and a number. */
export function shiftedTerm({ name, added, least, most }: ModelTerm, by: number): ModelTerm {
  return { name, added: added + by, least: least + by, most: most + by };
}

/** A yes or no that the solver chooses. */
export interface YesNo {
  readonly name: string;
  /** The same as 1 and 0. */
  readonly asNumber: ModelTerm;
}

type Part = readonly [factor: number, term: ModelTerm];

/**
 * A model of whole numbers as it is written down in MiniZinc, in the constraints that the solver Chuffed knows by itself:
 * then nothing of it has to be worked out before the search.
 */
export class ModelText {
  readonly #lines: string[] = [
    'predicate chuffed_cumulative_vars(array[int] of var int: s, array[int] of var int: d, array[int] of var int: r, var int: b);',
    'predicate int_lin_le_imp(array[int] of int: as, array[int] of var int: bs, int: c, var bool: r);',
    'predicate int_eq_imp(var int: a, var int: b, var bool: r);',
  ];
  readonly #lists = new Map<string, string>();
  #names = 0;

  /** A whole number between two others. */
  variable(kind: string, least: number, most: number): ModelTerm {
    return this.#declared(kind, `${least}..${most}`, least, most);
  }

  /** One of some values; at least one is given. */
  chosenFrom(kind: string, values: readonly number[]): ModelTerm {
    return this.#declared(kind, `{${values.join(',')}}`, Math.min(...values), Math.max(...values));
  }

  yesNo(kind: string): YesNo {
    const name = `${kind}${++this.#names}`;
    this.#lines.push(`var bool: ${name};`);
    const asNumber = this.variable('n', 0, 1);
    this.#lines.push(`constraint bool2int(${name}, ${asNumber.name});`);
    return { name, asNumber };
  }

  /** That a sum of terms with their factors is at most 0. */
  atMostZero(parts: readonly Part[]): void {
    const { factors, names, known } = summed(parts);
    if (names.length > 0) this.#lines.push(`constraint int_lin_le([${factors}], [${names}], ${-known});`);
    else if (known > 0) this.never();
  }

  /** That a sum of terms with their factors is at most 0, where the answer is yes. */
  atMostZeroIf({ name }: YesNo, parts: readonly Part[]): void {
    const { factors, names, known } = summed(parts);
    if (names.length > 0) this.#lines.push(`constraint int_lin_le_imp([${factors}], [${names}], ${-known}, ${name});`);
    else if (known > 0) this.#lines.push(`constraint bool_clause([], [${name}]);`);
  }

  /** That a sum of terms with their factors is 0. */
  zero(parts: readonly Part[]): void {
    const { factors, names, known } = summed(parts);
    if (names.length > 0) this.#lines.push(`constraint int_lin_eq([${factors}], [${names}], ${-known});`);
    else if (known !== 0) this.never();
  }

  /** That two terms are the same, where the answer is yes; the second is a variable or known. */
  sameIf({ name }: YesNo, a: ModelTerm, b: ModelTerm): void {
    this.#lines.push(`constraint int_eq_imp(${this.plain(a)}, ${this.plain(b)}, ${name});`);
  }

  anyOf(answers: readonly YesNo[]): void {
    this.#lines.push(`constraint bool_clause([${answers.map(({ name }) => name)}], []);`);
  }

  /** Nothing solves it. */
  never(): void {
    this.#lines.push('constraint bool_clause([], []);');
  }

  /** The later of two moments. */
  later(a: ModelTerm, b: ModelTerm): ModelTerm {
    if (a.least >= b.most) return a;
    if (b.least >= a.most) return b;
    const later = this.variable('x', Math.max(a.least, b.least), Math.max(a.most, b.most));
    this.#lines.push(`constraint int_max(${this.plain(a)}, ${this.plain(b)}, ${later.name});`);
    return later;
  }

  /** The entry of a list at an index that counts from 1. */
  entry(list: readonly number[], index: ModelTerm): ModelTerm {
    const own = list.slice(index.least - 1, index.most);
    const least = own.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY);
    const most = own.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
    if (least === most) return knownTerm(least);
    const value = this.chosenFrom(
      'e',
      [...new Set(own)].sort((a, b) => a - b),
    );
    this.#lines.push(`constraint array_int_element(${this.plain(index)}, ${this.#list(list)}, ${value.name});`);
    return value;
  }

  /** That at no moment more than `capacity` is taken by uses that begin, last and take so much. */
  atMostAtATime(
    uses: readonly { readonly start: ModelTerm; readonly length: ModelTerm; readonly amount: number }[],
    capacity: number,
  ): void {
    const starts = uses.map(({ start }) => this.plain(start));
    const lengths = uses.map(({ length }) => this.plain(length));
    const amounts = uses.map(({ amount }) => amount);
    this.#lines.push(`constraint chuffed_cumulative_vars([${starts}], [${lengths}], [${amounts}], ${capacity});`);
  }

  /** A term as a variable or a number alone. */
  plain(term: ModelTerm): string {
    if (term.name === null) return String(term.added);
    if (term.added === 0) return term.name;
    const same = this.variable('y', term.least, term.most);
    this.zero([
      [1, term],
      [-1, same],
    ]);
    return String(same.name);
  }

  /** The whole text with what is to be solved at its end. */
  toText(solve: string, output: string): string {
    return [...this.#lines, `solve ${solve};`, `output ${output};`, ''].join('\n');
  }

  #declared(kind: string, values: string, least: number, most: number): ModelTerm {
    const name = `${kind}${++this.#names}`;
    this.#lines.push(`var ${values}: ${name};`);
    return { name, added: 0, least, most };
  }

  #list(list: readonly number[]): string {
    const values = `[${list.join(',')}]`;
    const known = this.#lists.get(values);
    if (known !== undefined) return known;
    const name = `list${this.#lists.size}`;
    this.#lists.set(values, name);
    this.#lines.push(`array[1..${list.length}] of int: ${name} = ${values};`);
    return name;
  }
}

function summed(parts: readonly Part[]) {
  const byName = new Map<string, number>();
  let known = 0;
  for (const [factor, { name, added }] of parts) {
    known += factor * added;
    if (name !== null) byName.set(name, (byName.get(name) ?? 0) + factor);
  }
  const left = [...byName].filter(([, factor]) => factor !== 0);
  return { factors: left.map(([, factor]) => factor), names: left.map(([name]) => name), known };
}
