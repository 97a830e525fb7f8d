import { type Body, type BodyCheck, bodyFromProfile } from '@/lib/geometry/body';
import type { SpecModel } from '@/lib/spec/spec-model';

type TypedBody = NonNullable<SpecModel['body']>;

/** The body of a spec as checked. */
export interface BodyFacts {
  readonly body: Body | null;
  /** Why the profile is no body. */
  readonly refusal: Exclude<BodyCheck, { ok: true }> | null;
  /** Tells this body from any other of the book; 0: none entered. */
  readonly serial: number;
}

const NO_BODY: BodyFacts = { body: null, refusal: null, serial: 0 };

/** Bodies as checked, each model's last one kept: most revisions of a model have the same. */
export class BodyBook {
  private readonly lastOf = new Map<string, { readonly typed: TypedBody; readonly facts: BodyFacts }>();
  private made = 0;

  of(modelId: string, typed: SpecModel['body']): BodyFacts {
    if (typed === null) return NO_BODY;
    const last = this.lastOf.get(modelId);
    if (last !== undefined && isSameBody(last.typed, typed)) return last.facts;
    const check = bodyFromProfile(typed.stations, typed.lengthMm);
    const serial = ++this.made;
    const facts = check.ok ? { body: check.body, refusal: null, serial } : { body: null, refusal: check, serial };
    this.lastOf.set(modelId, { typed, facts });
    return facts;
  }
}

function isSameBody(a: TypedBody, b: TypedBody): boolean {
  if (a === b) return true;
  if (a.lengthMm !== b.lengthMm || a.stations.length !== b.stations.length) return false;
  for (let i = 0; i < a.stations.length; i++) {
    const [one, other] = [a.stations[i], b.stations[i]];
    if (one?.xMm !== other?.xMm || one?.halfHeightMm !== other?.halfHeightMm) return false;
    if (one?.halfWidthMm !== other?.halfWidthMm) return false;
  }
  return true;
}
