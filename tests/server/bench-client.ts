import type { BatchAction } from '@/lib/contracts/batch-action';

/** Numbers from 0 to below 1 that are the same for the same seed. Mulberry32 by Tommy Ettinger, public domain. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

interface Sending {
  readonly batchId: string;
  readonly key: string;
  readonly action: BatchAction;
}

/**
 * A phone at the bench: sends one action after another, and sends again, under the same key, what it heard no answer
 * to. `acknowledged` holds what the server said it has.
 */
export class BenchClient {
  readonly acknowledged: { readonly batchId: string; readonly key: string; readonly seq: number }[] = [];
  repeated = 0;
  #sent = 0;
  #unanswered: Sending | null = null;

  constructor(
    readonly name: string,
    readonly random: () => number,
  ) {}

  /** Sends until the server is gone. Throws when it refuses something that fits. */
  async sendUntilCutOff(url: string, batchIds: readonly string[]): Promise<void> {
    for (;;) {
      const sending = this.#unanswered ?? this.#next(batchIds);
      if (sending === this.#unanswered) this.repeated += 1;
      this.#unanswered = sending;
      const answer = await post(url, sending);
      if (answer === null) return;
      if (answer.status !== 201 && answer.status !== 200) {
        throw new Error(`${this.name} was refused: ${answer.status} ${JSON.stringify(answer.body)}`);
      }
      this.acknowledged.push({ batchId: sending.batchId, key: sending.key, seq: seqOf(answer.body) });
      this.#unanswered = null;
    }
  }

  #next(batchIds: readonly string[]): Sending {
    this.#sent += 1;
    const key = `${this.name}-action-${this.#sent}`;
    const batchId = batchIds[Math.floor(this.random() * batchIds.length)] ?? '';
    const isMix = this.random() < 0.2;
    const action: BatchAction = isMix
      ? {
          kind: 'mix-started',
          mixId: `${key}-mix`,
          operationId: 'rev-glue',
          materialId: 'glue',
          massG: 9,
          temperatureC: 21,
          lotIds: ['glue-lot'],
        }
      : { kind: 'noted', text: `Note ${this.#sent} of ${this.name}`, pieces: [1] };
    return { batchId, key, action };
  }
}

async function post(url: string, { batchId, key, action }: Sending): Promise<{ status: number; body: unknown } | null> {
  let status = 0;
  let text = '';
  try {
    const response = await fetch(`${url}/api/v1/batches/${batchId}/events`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: url },
      body: JSON.stringify({ key, seenSeq: 0, action }),
    });
    status = response.status;
    text = await response.text();
  } catch {
    return null; // cut off: whether it was taken in, nobody knows
  }
  return { status, body: text.startsWith('{') ? JSON.parse(text) : text };
}

function seqOf(body: unknown): number {
  if (typeof body === 'object' && body !== null && 'seq' in body && typeof body.seq === 'number') return body.seq;
  throw new Error(`an answer without the event's place in the history: ${JSON.stringify(body)}`);
}
