/** One glue-up or coat as it was weighed. */
export interface WeighedUse {
  /** What was in the cup when it was mixed, g. */
  readonly mixedG: number;
  /** What was left in cup and on stick, weighed back, g. */
  readonly leftG: number;
  /** What its joints or coats take by geometry, without any waste, g. */
  readonly netG: number;
}

export interface Waste {
  /** Mass used for each gram that geometry asks for, 1 or more. */
  readonly factor: number;
  readonly basis: 'common' | 'own';
  /** Weighings behind it. */
  readonly count: number;
}

/** Without the shop's own weighings. Common practice, no source: 1.3 to 2 for joints, about 1.35 for brushed coats. */
export const COMMON_WASTE = { joint: 1.5, coat: 1.35 } as const;

/** Weighings from which the shop's own figure counts. Chosen. */
export const WEIGHINGS_NEEDED = 3;

/**
 * The shop's waste: all that was used over all that geometry asked for, so a large glue-up counts for more. Before three
 * weighings it is the common figure. Weighings that cannot be (more left than mixed, nothing needed) are passed over.
 */
export function shopWaste(weighed: readonly WeighedUse[], common: number): Waste {
  const sound = weighed.filter(
    ({ mixedG, leftG, netG }) =>
      [mixedG, leftG, netG].every(Number.isFinite) && leftG >= 0 && mixedG > leftG && netG > 0,
  );
  if (sound.length < WEIGHINGS_NEEDED) return { factor: common, basis: 'common', count: sound.length };
  const used = sound.reduce((sum, { mixedG, leftG }) => sum + mixedG - leftG, 0);
  const net = sound.reduce((sum, { netG }) => sum + netG, 0);
  return { factor: Math.max(1, used / net), basis: 'own', count: sound.length };
}
