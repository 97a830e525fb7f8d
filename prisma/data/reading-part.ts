import { Prisma } from '@/prisma/generated/sqlite/client';

/** Readings of one sensor as plain columns: instants strictly rising, NaN where the humidity is not known. */
export interface ReadingRows {
  readonly at: Float64Array;
  readonly temperatureC: Float64Array;
  readonly humidityPct: Float64Array | null;
}

/**
 * Some readings as a table (at, c, pct) that one statement can select from, made from a few parameters however many
 * rows there are. Rows [from, `to`) are in it; the next part begins at `to`.
 */
export interface ReadingPart {
  readonly sent: Prisma.Sql;
  readonly to: number;
}

/**
 * One whole number a reading: steps since the first instant above the lowest 28 bits, and below them the temperature in
 * millionths of a degree, counted from -100 degC. That is half the text of two numbers, and SQLite reads a whole number
 * exactly, while a decimal number in JSON may come out off by one bit.
 */
const TEMPERATURE_BITS = 28;
const TEMPERATURE_RANGE = 2 ** TEMPERATURE_BITS;
const TEMPERATURE_FROM = 100_000_000;

/** Steps that leave the number below 2^53, which JavaScript holds exactly. */
const MOST_STEPS = 2 ** (53 - TEMPERATURE_BITS);

/** For SQLite: a JSON list of packed numbers, or of pairs of such a number and the humidity where there is any. */
export function sqlitePart({ at, temperatureC, humidityPct }: ReadingRows, from: number, most: number): ReadingPart {
  const baseAt = at[from] ?? 0;
  const stepMs = commonStep(at, from, most);
  let to = from;
  let json = '';
  for (; to < most; to += 1) {
    const steps = ((at[to] ?? 0) - baseAt) / stepMs;
    if (steps >= MOST_STEPS) break;
    const packed = steps * TEMPERATURE_RANGE + millionths(temperatureC[to] ?? 0) + TEMPERATURE_FROM;
    const pct = humidityPct?.[to] ?? Number.NaN;
    if (to > from) json += ',';
    json += humidityPct === null ? packed : `[${packed}${Number.isNaN(pct) ? '' : `,${millionths(pct)}`}]`;
  }
  const list = `[${json}]`;
  const [number, pct] =
    humidityPct === null
      ? [Prisma.sql`value`, Prisma.sql`NULL`]
      : [Prisma.sql`(value ->> 0)`, Prisma.sql`(value ->> 1) / 1e6`];
  const sent = Prisma.sql`
    SELECT ${BigInt(baseAt)} + (${number} >> ${TEMPERATURE_BITS}) * ${BigInt(stepMs)} AS at,
      ((${number} & ${TEMPERATURE_RANGE - 1}) - ${TEMPERATURE_FROM}) / 1e6 AS c, ${pct} AS pct
    FROM json_each(${list})`;
  return { sent, to };
}

/** For Postgres: a list a column. */
export function postgresPart({ at, temperatureC, humidityPct }: ReadingRows, from: number, to: number): ReadingPart {
  const pct = humidityPct?.subarray(from, to) ?? new Float64Array(to - from).fill(Number.NaN);
  const sent = Prisma.sql`
    SELECT at, c / 1e6::float8 AS c, nullif(pct, 'NaN') / 1e6::float8 AS pct FROM unnest(
      string_to_array(${at.subarray(from, to).join()}, ',')::bigint[],
      string_to_array(${temperatureC.subarray(from, to).map(millionths).join()}, ',')::float8[],
      string_to_array(${pct.map(millionths).join()}, ',')::float8[]
    ) AS listed (at, c, pct)`;
  return { sent, to };
}

function millionths(value: number): number {
  return Math.round(value * 1e6);
}

/** The longest step that all of these instants are whole numbers of apart, ms. */
function commonStep(at: Float64Array, from: number, to: number): number {
  let step = 0;
  for (let row = from + 1; row < to && step !== 1; row += 1) {
    let rest = (at[row] ?? 0) - (at[row - 1] ?? 0);
    while (rest !== 0) [step, rest] = [rest, step % rest];
  }
  return step === 0 ? 1 : step;
}
