import type { Quantity } from '@/lib/units/quantity';

/** Figures within a sentence, printed in the shop's units by the screen. */
export const mm = (value: number): Quantity => ({ value, unit: 'mm' });
/** A wire or a bit. */
export const wireMm = (value: number): Quantity => ({ value, unit: 'wire-mm' });
export const newtons = (value: number): Quantity => ({ value, unit: 'N' });
export const degrees = (value: number): Quantity => ({ value, unit: 'deg' });
export const celsius = (value: number): Quantity => ({ value, unit: 'degC' });
export const times = (value: number): Quantity => ({ value, unit: 'times' });
export const percent = (value: number): Quantity => ({ value, unit: 'percent' });
export const days = (value: number): Quantity => ({ value, unit: 'days' });
export const count = (value: number): Quantity => ({ value, unit: 'count' });
/** A bare number, as a specific gravity. */
export const bare = (value: number): Quantity => ({ value, unit: 'none' });
