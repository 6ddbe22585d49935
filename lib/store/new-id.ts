import { randomBytes } from "node:crypto";

/** Without vowels and look-alikes, so that an id read aloud in a noisy shop stays what it is. */
const letters = "bcdfghjkmnpqrstvwxyz23456789";

/** Twelve letters: some 57 bits, far more than one shop's records can collide in. */
export function newId(): string {
  return Array.from(randomBytes(12), (byte) => letters[byte % letters.length]).join("");
}

const shape = new RegExp(`^[${letters}]{12}$`);

/** Whether this could be an id of ours. A device that works without us makes its own; chance keeps them apart. */
export const isNewId = (text: string): boolean => shape.test(text);
