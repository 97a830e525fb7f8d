import type { FigureSource } from '@/lib/materials/figure-source';

/** A habit of the trade: there is no document to name. */
export function commonPractice(text: string): FigureSource {
  return { kind: 'common-practice', text: `Common practice, no source: ${text}` };
}

/** Written down from memory, without a document at hand. */
export function fromMemory(text: string): FigureSource {
  return { kind: 'from-memory', text: `From memory: ${text}` };
}
