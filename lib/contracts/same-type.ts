/** Accepts `A` only where each of two types can stand for the other: the guard that a schema and its type agree. */
export type BothWays<A extends B, B extends A2, A2 = A> = [A, B];
