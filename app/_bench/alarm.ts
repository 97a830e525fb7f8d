'use client';

/**
 * The sound of a pot life that runs out. Browsers let a page sound only after a touch or a key, so the alarm knows
 * whether it may; which mixes are silenced is remembered on the device. It never decides anything: a mix is past its
 * pot life whether or not anybody heard it.
 */
export interface AlarmState {
  /** `untouched`: the browser keeps the page silent until it is touched. `missing`: this device has no such sound. */
  readonly sound: 'ready' | 'untouched' | 'missing';
  readonly silencedMixIds: readonly string[];
}

const STORAGE_KEY = 'silenced-mixes';
/** Silenced mixes remembered; the oldest are forgotten first. Chosen: far more than run at once. */
const REMEMBERED = 50;
const BLOCKED: AlarmState = { sound: 'untouched', silencedMixIds: [] };

let state: AlarmState = BLOCKED;
let context: AudioContext | null = null;
const listeners = new Set<() => void>();

function change(next: Partial<AlarmState>): void {
  state = { ...state, ...next };
  for (const listener of listeners) listener();
}

export function alarmState(): AlarmState {
  return state;
}

export function blockedAlarm(): AlarmState {
  return BLOCKED;
}

export function subscribeToAlarm(listener: () => void): () => void {
  listeners.add(listener);
  if (listeners.size === 1) {
    change({ silencedMixIds: readSilenced() });
    wake();
    window.addEventListener('pointerdown', wake);
    window.addEventListener('keydown', wake);
  }
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    window.removeEventListener('pointerdown', wake);
    window.removeEventListener('keydown', wake);
  };
}

/** Asks the browser for sound; it agrees from the first touch on. */
function wake(): void {
  if (!('AudioContext' in window)) {
    if (state.sound !== 'missing') change({ sound: 'missing' });
    return;
  }
  context ??= new AudioContext();
  const current = context;
  const tell = () => change({ sound: current.state === 'running' ? 'ready' : 'untouched' });
  if (current.state === 'running') {
    if (state.sound !== 'ready') tell();
    return;
  }
  current.onstatechange = tell;
  void current.resume().catch(() => undefined);
}

/** Two short tones for a mix that nears its end, three longer ones for one that is past it. */
export function soundAlarm(kind: 'near' | 'past'): void {
  if (context === null || context.state !== 'running') return;
  const [count, lengthS, frequencyHz] = kind === 'near' ? [2, 0.12, 660] : [3, 0.3, 880];
  for (let index = 0; index < count; index += 1) {
    const startS = context.currentTime + index * lengthS * 1.6;
    const tone = context.createOscillator();
    const volume = context.createGain();
    tone.frequency.value = frequencyHz;
    volume.gain.setValueAtTime(0.0001, startS);
    volume.gain.exponentialRampToValueAtTime(0.4, startS + 0.02);
    volume.gain.exponentialRampToValueAtTime(0.0001, startS + lengthS);
    tone.connect(volume).connect(context.destination);
    tone.start(startS);
    tone.stop(startS + lengthS);
  }
}

export function setSilenced(mixId: string, isSilenced: boolean): void {
  const others = state.silencedMixIds.filter((id) => id !== mixId);
  change({ silencedMixIds: isSilenced ? [...others, mixId].slice(-REMEMBERED) : others });
  try {
    localStorage.setItem(STORAGE_KEY, JSON.stringify(state.silencedMixIds));
  } catch {
    // Not remembered beyond this page, then.
  }
}

function readSilenced(): string[] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(STORAGE_KEY) ?? '[]');
    return Array.isArray(stored) ? stored.filter((id) => typeof id === 'string') : [];
  } catch {
    return [];
  }
}
