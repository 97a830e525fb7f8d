import type { FittingSheet, ScrewEyeSheet } from '@/lib/materials/fitting-sheet';

/** Says in Stock why the strength is left open. */
export const OPEN_STRENGTH =
  'There is no standard for its strength: enter what its maker states, and measure the sizes of yours.';

function screwEye(lengthMm: number, wireMm: number, eyeInsideMm: number) {
  const sheet: ScrewEyeSheet = {
    threadDiameterMm: wireMm,
    // Chosen: half of the whole length is full thread.
    threadLengthMm: lengthMm / 2,
    eyeInsideMm,
    isEyeClosed: false,
    wire: { alloy: 'stainless-302-304', temper: null, diameterMm: wireMm, sources: {} },
    sources: {},
  };
  return { name: `Screw eye ${lengthMm} x ${wireMm.toFixed(1)} mm, stainless`, sheet };
}

export const SCREW_EYES = [screwEye(12, 1, 2.5), screwEye(16, 1.2, 3), screwEye(20, 1.5, 4)];

function splitRing(outsideMm: number) {
  const sheet: FittingSheet = { lengthMm: outsideMm, sources: {} };
  return { name: `Split ring ${outsideMm} mm, stainless`, sheet };
}

export const SPLIT_RINGS = [6, 8, 10].map(splitRing);
