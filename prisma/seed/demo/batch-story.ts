import type { BatchEvent, BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS, SECOND_MS } from '@/lib/units/instant';
import { demoId } from './demo-id';
import { DEMO_GLUES, demoLotIds } from './demo-materials';
import type { DemoRevision } from './demo-model';

export interface DemoBatch {
  readonly id: string;
  readonly number: number;
  readonly revisionId: string;
  readonly quantity: number;
  /** YYYY-MM-DD. */
  readonly dueOn: string | null;
  readonly orderNote: string;
  readonly events: readonly BatchEvent[];
}

export interface StoryStart {
  readonly number: number;
  readonly revision: DemoRevision;
  readonly quantity: number;
  readonly dueOn: string | null;
  readonly orderNote: string;
  readonly openedAt: Instant;
  readonly personId: string;
}

export interface Cup {
  readonly operation: string;
  readonly materialId: string;
  readonly massG: number;
  readonly temperatureC: number;
}

/** Piece numbers from `first` to `last`, without the ones left out. */
export function pieces(first: number, last: number, without: readonly number[] = []): readonly number[] {
  return Array.from({ length: last - first + 1 }, (_, index) => first + index).filter((n) => !without.includes(n));
}

export function operationId(revision: DemoRevision, key: string): string {
  return `${revision.id}-${key}`;
}

export function anchorId(revision: DemoRevision, key: string): string {
  return `${revision.id}-${key}`;
}

/** Writes a batch's history with the event bodies the app itself writes, one sentence of the story a call. */
export class BatchStory {
  readonly #start: StoryStart;
  readonly #events: BatchEvent[] = [];
  #mixes = 0;

  constructor(start: StoryStart) {
    this.#start = start;
    this.#add(start.openedAt, start.personId, { kind: 'batch-opened', quantity: start.quantity });
  }

  work(at: Instant, personId: string, operation: string, on: readonly number[]): this {
    return this.#add(at, personId, {
      kind: 'work-done',
      operationId: operationId(this.#start.revision, operation),
      pieces: on,
    });
  }

  /** Starts a mix and returns its id. */
  mix(at: Instant, personId: string, cup: Cup): string {
    const body = this.#mixBody(this.#mixes + 1, cup);
    this.#mixes += 1;
    this.#add(at, personId, body);
    return body.mixId;
  }

  joints(at: Instant, personId: string, mixId: string, on: readonly number[], anchors: readonly string[]): this {
    const { revision } = this.#start;
    const joints = on.flatMap((piece) => anchors.map((key) => ({ piece, anchorId: anchorId(revision, key) })));
    return this.#add(at, personId, { kind: 'joints-set', mixId, joints });
  }

  coat(
    at: Instant,
    personId: string,
    mixId: string,
    on: readonly number[],
    air: { readonly airC: number; readonly humidityPct: number },
  ): this {
    return this.#add(at, personId, { kind: 'coat-applied', mixId, pieces: on, ...air });
  }

  close(at: Instant, personId: string, mixId: string): this {
    return this.#add(at, personId, { kind: 'mix-closed', mixId });
  }

  /** One mix from the stirring stick to the bin: `minutes` after mixing each share of pieces is coated. */
  coats(at: Instant, personId: string, cup: Cup, shares: readonly (readonly [number, readonly number[]])[]): this {
    const mixId = this.mix(at, personId, cup);
    const air = { airC: cup.temperatureC, humidityPct: 46 };
    for (const [minutes, on] of shares) this.coat(at + minutes * MINUTE_MS, personId, mixId, on, air);
    const lastMinutes = Math.max(...shares.map(([minutes]) => minutes));
    return this.close(at + (lastMinutes + 2) * MINUTE_MS, personId, mixId);
  }

  scrap(at: Instant, personId: string, on: readonly number[], reason: string): this {
    return this.#add(at, personId, { kind: 'pieces-scrapped', pieces: on, reason });
  }

  note(at: Instant, personId: string, on: readonly number[], text: string): this {
    return this.#add(at, personId, { kind: 'noted', text, pieces: on });
  }

  /** Corrects the mass of the newest mix, which is event `seq`. */
  correctMass(at: Instant, personId: string, seq: number, mixedAt: Instant, cup: Cup, reason: string): this {
    const body: CorrectableBody = this.#mixBody(this.#mixes, cup);
    return this.#add(at, personId, { kind: 'corrected', seq, reason, replacement: { at: mixedAt, body } });
  }

  finish(at: Instant, personId: string): this {
    return this.#add(at, personId, { kind: 'batch-finished' });
  }

  get lastSeq(): number {
    return this.#events.length;
  }

  done(): DemoBatch {
    const { number, revision, quantity, dueOn, orderNote } = this.#start;
    return {
      id: demoId(`batch-${number}`),
      number,
      revisionId: revision.id,
      quantity,
      dueOn,
      orderNote,
      events: this.#events,
    };
  }

  #mixBody(number: number, { operation, materialId, massG, temperatureC }: Cup) {
    const glue = DEMO_GLUES.find(({ id }) => id === materialId);
    if (glue === undefined) throw new RangeError(`a demo mix needs a glue of the demo workshop, got ${materialId}`);
    return {
      kind: 'mix-started',
      mixId: demoId(`mix-${this.#start.number}-${number}`),
      number,
      operationId: operationId(this.#start.revision, operation),
      materialId,
      materialName: glue.name,
      sheet: glue.sheet,
      massG,
      temperatureC,
      lotIds: demoLotIds(materialId),
    } as const satisfies BatchEventBody;
  }

  #add(at: Instant, personId: string, body: BatchEventBody): this {
    const seq = this.#events.length + 1;
    const recordedAt = at + 2 * SECOND_MS;
    this.#events.push({ seq, key: demoId(`${this.#start.number}-${seq}`), at, recordedAt, personId, body });
    return this;
  }
}
