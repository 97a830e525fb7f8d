/**
 * A key for something new, made on this device: 32 hexadecimal digits. Not crypto.randomUUID, which browsers
 * withhold from a page that came over plain http, as it does in a workshop's own network.
 */
export function newClientKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
