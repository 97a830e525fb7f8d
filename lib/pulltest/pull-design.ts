/** Hex digest of a text, the same everywhere: SHA-256 in the app. Handed in, so that this stays free of the system. */
export type Digest = (text: string) => string;

/** A series to be made: every mix holds one specimen of each depth in each condition. */
export interface DesignInput {
  /** Depths of shank in glue, mm. */
  readonly depthsMm: readonly number[];
  /** Levels of a second factor (woods, glues, wires); one text where there is none. */
  readonly conditions: readonly string[];
  /** True where a mix can serve all conditions (woods, wires), false where each needs mixes of its own (glues). */
  readonly sharesMixes: boolean;
  /** Mixes of each kind of glue: the repeats. */
  readonly mixes: number;
  readonly seed: string;
  /** Whether all are pulled in one order, or mix by mix because they cure one after the other. */
  readonly order: 'all' | 'mix-by-mix';
}

export interface Specimen {
  /** `B-3`: mix B, third specimen. */
  readonly id: string;
  /** Letter of its mix. */
  readonly mix: string;
  readonly depthMm: number;
  readonly condition: string;
  /** When it is pulled, from 1. */
  readonly pullOrder: number;
}

export type DesignRefusal = 'no-depths' | 'bad-depth' | 'same-depth-twice' | 'no-condition' | 'bad-mixes' | 'too-many';
export type DesignWarning = 'fewer-than-3-mixes' | 'fewer-than-3-depths';

export type PullDesign =
  | {
      readonly ok: true;
      readonly specimens: readonly Specimen[];
      readonly mixes: readonly string[];
      readonly warnings: readonly DesignWarning[];
    }
  | { readonly ok: false; readonly code: DesignRefusal };

/** More than this is a slip of the pen. Chosen. */
const MOST_SPECIMENS = 500;

/**
 * The specimens of a series and the order in which to pull them. The order is that of the digests of `seed:id`: it can
 * be made again anywhere from the seed, and nobody can bend it. Depths are depths whatever the order they are given in.
 *
 * Warns of fewer than 3 mixes (how mixes differ cannot be told) and fewer than 3 depths (a bend cannot be seen).
 */
export function pullDesign(input: DesignInput, digest: Digest): PullDesign {
  const refusal = refusalOf(input);
  if (refusal !== null) return { ok: false, code: refusal };
  const depths = [...input.depthsMm].sort((a, b) => a - b);
  const perMix = input.sharesMixes ? [input.conditions] : input.conditions.map((condition) => [condition]);
  const plain = perMix.flatMap((conditions, kind) =>
    Array.from({ length: input.mixes }, (_, i) => mixLetters(kind * input.mixes + i)).flatMap((mix) =>
      conditions
        .flatMap((condition) => depths.map((depthMm) => ({ condition, depthMm })))
        .map(({ condition, depthMm }, i) => ({ id: `${mix}-${i + 1}`, mix, depthMm, condition })),
    ),
  );
  const mixes = [...new Set(plain.map(({ mix }) => mix))];
  const shuffled = seededOrder(
    plain.map(({ id }) => id),
    input.seed,
    digest,
  );
  const rank = new Map(shuffled.map((id, index) => [id, index]));
  const inOrder = [...plain].sort((a, b) => {
    const byMix = input.order === 'mix-by-mix' ? mixes.indexOf(a.mix) - mixes.indexOf(b.mix) : 0;
    return byMix !== 0 ? byMix : (rank.get(a.id) ?? 0) - (rank.get(b.id) ?? 0);
  });
  const warnings: DesignWarning[] = [];
  if (input.mixes < 3) warnings.push('fewer-than-3-mixes');
  if (depths.length < 3) warnings.push('fewer-than-3-depths');
  const specimens = inOrder.map((specimen, index): Specimen => ({ ...specimen, pullOrder: index + 1 }));
  return { ok: true, specimens, mixes, warnings };
}

/**
 * Ids in the order of the digests of `seed:id`, a fair order that can be checked by anyone with the seed.
 * Chosen: a cryptographic digest needs no agreement on a random generator.
 */
export function seededOrder(ids: readonly string[], seed: string, digest: Digest): string[] {
  const keyed = ids.map((id) => ({ id, key: digest(`${seed}:${id}`) }));
  return keyed.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0)).map(({ id }) => id);
}

function refusalOf({ depthsMm, conditions, mixes, sharesMixes }: DesignInput): DesignRefusal | null {
  if (depthsMm.length === 0) return 'no-depths';
  if (!depthsMm.every((depth) => depth > 0 && Number.isFinite(depth))) return 'bad-depth';
  const sorted = [...depthsMm].sort((a, b) => a - b);
  if (sorted.some((depth, i) => i > 0 && depth - (sorted[i - 1] ?? 0) < 0.05)) return 'same-depth-twice';
  if (conditions.length === 0 || new Set(conditions).size !== conditions.length) return 'no-condition';
  if (!(Number.isInteger(mixes) && mixes >= 1)) return 'bad-mixes';
  const kinds = sharesMixes ? 1 : conditions.length;
  const perMix = depthsMm.length * (sharesMixes ? conditions.length : 1);
  return kinds * mixes * perMix > MOST_SPECIMENS ? 'too-many' : null;
}

/** A, B, ... Z, AA, AB, ... */
export function mixLetters(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : mixLetters(Math.floor(index / 26) - 1) + letter;
}
