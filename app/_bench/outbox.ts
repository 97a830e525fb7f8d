'use client';

import type { BatchAction, RecordEventInput } from '@/lib/contracts/batch-action';
import type { RecordEventAnswer } from '@/lib/contracts/record-event-answer';
import type { Instant } from '@/lib/units/instant';
import { newClientKey } from './client-key';
import { serverTime } from './server-clock';

/**
 * What was done at this device and is not acknowledged by the server yet. It is kept in the browser's storage, so
 * that neither a dead network nor a closed page loses it, and sent again under the same key until it is answered.
 */
export interface UnsentAction {
  readonly batchId: string;
  readonly input: RecordEventInput;
  /** What it is in the maker's words: "6 joints, mix 2". */
  readonly label: string;
}

/** What the server said last. */
export type LastAnswer =
  | {
      readonly kind: 'saved';
      readonly batchId: string;
      readonly label: string;
      readonly seq: number;
      readonly warnings: readonly string[];
      readonly isUndo: boolean;
    }
  | { readonly kind: 'refused'; readonly label: string; readonly message: string; readonly details: readonly string[] };

export interface OutboxState {
  readonly unsent: readonly UnsentAction[];
  /** The last try failed: the network or the server is away. */
  readonly isStuck: boolean;
  readonly last: LastAnswer | null;
}

const STORAGE_KEY = 'unsent-actions';
const RETRY_AFTER_MS = [1_000, 2_000, 4_000, 8_000, 15_000] as const;
const EMPTY: OutboxState = { unsent: [], isStuck: false, last: null };

let state: OutboxState = EMPTY;
let failedTries = 0;
let isSending = false;
let timer: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

function change(next: Partial<OutboxState>): void {
  state = { ...state, ...next };
  for (const listener of listeners) listener();
}

export function outboxState(): OutboxState {
  return state;
}

export function emptyOutbox(): OutboxState {
  return EMPTY;
}

/** For useSyncExternalStore; the first listener takes up what an earlier page left unsent. */
export function subscribeToOutbox(listener: () => void): () => void {
  listeners.add(listener);
  if (listeners.size === 1) {
    const stored = readStored();
    const known = new Set(stored.map((item) => item.input.key));
    change({ unsent: [...stored, ...state.unsent.filter((item) => !known.has(item.input.key))] });
    void sendAll();
  }
  return () => listeners.delete(listener);
}

/** How the first try of an action ended. `unsent`: the server is away, and the outbox goes on trying. */
export type FirstTry = { readonly kind: 'saved' | 'unsent' } | Extract<LastAnswer, { kind: 'refused' }>;

const waiting = new Map<string, (outcome: FirstTry) => void>();

/**
 * Puts an action on its way; it is stored before the first try. `at` defaults to now by the server's clock.
 * A refusal at the first try is handed to the caller, who shows it beside what was typed.
 */
export function sendAction(action: {
  readonly batchId: string;
  readonly seenSeq: number;
  readonly action: BatchAction;
  readonly label: string;
  readonly at?: Instant | undefined;
}): Promise<FirstTry> {
  const input = { key: newClientKey(), seenSeq: action.seenSeq, at: action.at ?? serverTime(), action: action.action };
  change({ unsent: [...state.unsent, { batchId: action.batchId, input, label: action.label }], last: null });
  store();
  return new Promise((resolve) => {
    waiting.set(input.key, resolve);
    void sendAll();
  });
}

/** Tells the caller of `sendAction` how it went; false when nobody waits for it any more. */
function settle(key: string, outcome: FirstTry): boolean {
  const resolve = waiting.get(key);
  waiting.delete(key);
  resolve?.(outcome);
  return resolve !== undefined;
}

/** Tries again at once instead of waiting for the next try. */
export function retryNow(): void {
  void sendAll();
}

/** Gives the oldest unsent action up: the maker said so, for example because the batch is gone. */
export function dropOldest(): void {
  change({ unsent: state.unsent.slice(1), isStuck: false });
  store();
  void sendAll();
}

/** Shows a refusal in the bar, for an action that has no dialog to show it in. */
export function tellRefusal(refused: Extract<LastAnswer, { kind: 'refused' }>): void {
  change({ last: refused });
}

export function dismissAnswer(): void {
  change({ last: null });
}

/** One after the other in the order they were done, because joints need the mix they are set with. */
async function sendAll(): Promise<void> {
  if (isSending) return;
  isSending = true;
  clearTimeout(timer);
  for (let next = state.unsent[0]; next !== undefined; next = state.unsent[0]) {
    const answer = await post(next);
    if (answer === null) {
      const waitMs = RETRY_AFTER_MS[Math.min(failedTries, RETRY_AFTER_MS.length - 1)];
      failedTries += 1;
      change({ isStuck: true });
      for (const key of waiting.keys()) settle(key, { kind: 'unsent' });
      timer = setTimeout(() => void sendAll(), waitMs);
      break;
    }
    failedTries = 0;
    const { key } = next.input;
    const last = lastAnswer(next, answer);
    const isShown = settle(key, last.kind === 'saved' ? { kind: 'saved' } : last) && last.kind === 'refused';
    change({
      unsent: state.unsent.filter((item) => item.input.key !== key),
      isStuck: false,
      last: isShown ? null : last,
    });
    store();
  }
  isSending = false;
}

function lastAnswer({ batchId, label, input }: UnsentAction, answer: RecordEventAnswer): LastAnswer {
  if (!answer.ok) return { kind: 'refused', label, message: answer.message, details: answer.details };
  const { seq, warnings } = answer;
  return { kind: 'saved', batchId, label, seq, warnings, isUndo: input.action.kind === 'corrected' };
}

/** The server's answer, or null when it could not be had and the same must be sent again. */
async function post({ batchId, input }: UnsentAction): Promise<RecordEventAnswer | null> {
  try {
    const response = await fetch(`/api/v1/batches/${batchId}/events`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    });
    if (response.status >= 500 || response.status === 429) return null;
    return asAnswer(await response.json());
  } catch {
    return null;
  }
}

function asAnswer(body: unknown): RecordEventAnswer | null {
  if (typeof body !== 'object' || body === null || !('ok' in body)) return null;
  if (body.ok === true && 'seq' in body && typeof body.seq === 'number') {
    return {
      ok: true,
      seq: body.seq,
      isRepeat: 'isRepeat' in body && body.isRepeat === true,
      warnings: 'warnings' in body ? texts(body.warnings) : [],
    };
  }
  const message = 'message' in body && typeof body.message === 'string' ? body.message : 'The server refused this.';
  return { ok: false, code: 'refused', message, details: 'details' in body ? texts(body.details) : [] };
}

function texts(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((item) => typeof item === 'string') : [];
}

function store(): void {
  try {
    localStorage.setItem(STORAGE_KEY, JSON.stringify(state.unsent));
  } catch {
    // Storage is full or forbidden: the action lives on in this page and is still sent.
  }
}

function readStored(): UnsentAction[] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(STORAGE_KEY) ?? '[]');
    return Array.isArray(stored) ? stored.filter(isUnsent) : [];
  } catch {
    return [];
  }
}

/** Only the outline is looked at: the server reads the rest with its own contract. */
function isUnsent(item: unknown): item is UnsentAction {
  if (typeof item !== 'object' || item === null || !('input' in item) || !('batchId' in item)) return false;
  const { input, batchId } = item;
  return typeof batchId === 'string' && typeof input === 'object' && input !== null && 'key' in input;
}
