/*
 * What counts of readings say without any assumption about how they scatter.
 */

/**
 * The least share that holds a load, with that confidence, after n specimens held it and none failed.
 * 5 specimens, 0.75: 0.758. Throws RangeError for n < 1 or a confidence outside (0, 1).
 * Source: binomial with no failures, (1 - confidence)^(1/n).
 */
export function successRunShare(n: number, confidence = 0.75): number {
  if (!(Number.isInteger(n) && n >= 1 && confidence > 0 && confidence < 1)) {
    throw new RangeError(`successRunShare needs n of 1 or more and a confidence in (0, 1), got ${n}, ${confidence}`);
  }
  return (1 - confidence) ** (1 / n);
}

/**
 * The chance that the smallest of n readings lies above the point that a share 1 - content lies below: how often "the
 * worst of n" is taken for a lower value that it is not. 3, 0.95: 0.857.
 */
export function worstIsAboveChance(n: number, content = 0.95): number {
  return content ** n;
}

/**
 * The fewest readings of which the smallest is a lower tolerance limit: 28 for content 0.95 and confidence 0.75, 59
 * for 0.95 and 0.95.
 * Source: 1 - content^n >= confidence.
 */
export function readingsForWorst(content = 0.95, confidence = 0.75): number {
  return Math.ceil(Math.log(1 - confidence) / Math.log(content) - 1e-9);
}
