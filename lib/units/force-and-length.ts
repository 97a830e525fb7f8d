import { MM_PER_INCH, N_PER_POUND_FORCE } from '@/lib/units/convert';

/** Exact factors made of the inch and the pound-force, for tables printed in psi and in-lbf. */
export const MPA_PER_PSI = N_PER_POUND_FORCE / MM_PER_INCH ** 2;
export const NMM_PER_INCH_POUND = N_PER_POUND_FORCE * MM_PER_INCH;

/** MPa of a stress printed in psi. */
export function psi(stressPsi: number): number {
  return stressPsi * MPA_PER_PSI;
}

/** N of a force printed in pounds-force. */
export function poundsForce(forceLbf: number): number {
  return forceLbf * N_PER_POUND_FORCE;
}

/** mm of a length printed in inches. */
export function inches(lengthInches: number): number {
  return lengthInches * MM_PER_INCH;
}
