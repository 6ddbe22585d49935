/**
 * An id for a new mark: 96 random bits in hexadecimal. Not `crypto.randomUUID`, which a browser offers only on
 * https and localhost, while a phone in the shop opens the page by the computer's plain http address.
 */
export function newMarkId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
