import { type Body, type BodyCheck, bodyFromProfile } from '@/lib/geometry/body';
import type { SpecModel } from '@/lib/spec/spec-model';

/** The body of a spec as checked. */
export interface BodyFacts {
  readonly body: Body | null;
  /** Why the profile is no body. */
  readonly refusal: Exclude<BodyCheck, { ok: true }> | null;
  /** Tells this body from any other. */
  readonly key: string;
}

const NO_BODY: BodyFacts = { body: null, refusal: null, key: '' };

/** What a body is known by: its profile and stated length. */
export function bodyKey(body: SpecModel['body']): string {
  return body === null ? '' : JSON.stringify(body);
}

/** The body of a spec, or why there is none. */
export function bodyFacts(body: SpecModel['body'], key: string): BodyFacts {
  if (body === null) return NO_BODY;
  const check = bodyFromProfile(body.stations, body.lengthMm);
  return check.ok ? { body: check.body, refusal: null, key } : { body: null, refusal: check, key };
}
