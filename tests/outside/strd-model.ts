/** A value with its derivatives in the parameters. */
interface Dual {
  readonly value: number;
  readonly slopes: readonly number[];
}

type Term = (parameters: readonly number[], x: readonly number[]) => Dual;

const FUNCTIONS: Readonly<Record<string, readonly [(v: number) => number, (v: number) => number]>> = {
  exp: [Math.exp, Math.exp],
  log: [Math.log, (v) => 1 / v],
  cos: [Math.cos, (v) => -Math.sin(v)],
  sin: [Math.sin, Math.cos],
  arctan: [Math.atan, (v) => 1 / (1 + v * v)],
};

/** Right side of a model as the NIST files print it (`y = b1*(1-exp[-b2*x]) + e`), with exact derivatives. */
export function strdModel(text: string): Term {
  const right = (text.split('=')[1] ?? '').replace(/\+\s*e\s*$/, '');
  const tokens = right.match(/\*\*|[-+*/()[\]]|[a-z]+\d*|\d*\.?\d+(?:E[-+]?\d+)?|\d+\./gi) ?? [];
  let at = 0;
  const take = (): string => tokens[at++] ?? '';
  const sum = (): Term => {
    let left = product();
    while (tokens[at] === '+' || tokens[at] === '-') {
      const sign = take() === '+' ? 1 : -1;
      left = combine(
        left,
        product(),
        (a, b) => a + sign * b,
        () => [1, sign],
      );
    }
    return left;
  };
  const product = (): Term => {
    let left = signed();
    while (tokens[at] === '*' || tokens[at] === '/') {
      left =
        take() === '*'
          ? combine(
              left,
              signed(),
              (a, b) => a * b,
              (a, b) => [b, a],
            )
          : combine(
              left,
              signed(),
              (a, b) => a / b,
              (a, b) => [1 / b, -a / (b * b)],
            );
    }
    return left;
  };
  const signed = (): Term => {
    if (tokens[at] !== '-') return power();
    take();
    return combine(
      signed(),
      constant(0),
      (a) => -a,
      () => [-1, 0],
    );
  };
  const power = (): Term => {
    const base = atom();
    if (tokens[at] !== '**') return base;
    take();
    const exponent = signed();
    return combine(
      base,
      exponent,
      (a, b) => a ** b,
      (a, b) => [b * a ** (b - 1), a > 0 ? a ** b * Math.log(a) : 0],
    );
  };
  const atom = (): Term => {
    const token = take();
    if (token === '(' || token === '[') {
      const inner = sum();
      take();
      return inner;
    }
    const known = FUNCTIONS[token];
    if (known !== undefined) return combine(atom(), constant(0), known[0], (a) => [known[1](a), 0]);
    if (token === 'pi') return constant(Math.PI);
    if (/^b\d$/.test(token)) {
      const index = Number(token.slice(1)) - 1;
      return (b) => ({ value: b[index] ?? Number.NaN, slopes: b.map((_, j) => (j === index ? 1 : 0)) });
    }
    if (/^x\d?$/.test(token))
      return (b, x) => ({ value: x[Number(token.slice(1) || 1) - 1] ?? Number.NaN, slopes: b.map(() => 0) });
    if (!Number.isFinite(Number(token))) throw new Error(`unknown word ${token} in ${text}`);
    return constant(Number(token));
  };
  return sum();
}

function constant(value: number): Term {
  return (b) => ({ value, slopes: b.map(() => 0) });
}

function combine(
  left: Term,
  right: Term,
  value: (a: number, b: number) => number,
  partials: (a: number, b: number) => readonly [number, number],
): Term {
  return (b, x) => {
    const l = left(b, x);
    const r = right(b, x);
    const [dl, dr] = partials(l.value, r.value);
    // A constant exponent has no slope, and 0 times an undefined derivative must stay 0.
    const slopes = l.slopes.map(
      (s, j) => (s === 0 ? 0 : dl * s) + ((r.slopes[j] ?? 0) === 0 ? 0 : dr * (r.slopes[j] ?? 0)),
    );
    return { value: value(l.value, r.value), slopes };
  };
}
