import { type Body, type BodyCheck, bodyFromProfile } from '@/lib/geometry/body';
import type { SpecModel } from '@/lib/spec/spec-model';

/** The body of a spec as checked. */
export interface BodyFacts {
  readonly body: Body | null;
  /** Why the profile is no body. */
  readonly refusal: Exclude<BodyCheck, { ok: true }> | null;
  /** Tells this body from any other of the same context. */
  readonly serial: number;
}

/** The body of a spec, or why there is none. */
export function bodyFacts(typed: SpecModel['body'], serial: number): BodyFacts {
  if (typed === null) return { body: null, refusal: null, serial };
  const check = bodyFromProfile(typed.stations, typed.lengthMm);
  return check.ok ? { body: check.body, refusal: null, serial } : { body: null, refusal: check, serial };
}
