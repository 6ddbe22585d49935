import { invariant } from "@/lib/base";

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/**
 * The name of a picture by its content, wherever it lies: RFC 6920, "ni:///sha-256;" and the digest in base64url
 * without padding. Takes 64 lower-case hexadecimal digits.
 */
export function photoIri(sha256: string): string {
  invariant(/^[0-9a-f]{64}$/.test(sha256), "a SHA-256 has 64 hexadecimal digits");
  const bits = [...sha256].map((digit) => parseInt(digit, 16).toString(2).padStart(4, "0")).join("");
  const sextets = bits.match(/.{1,6}/g) ?? [];
  return `ni:///sha-256;${sextets.map((six) => ALPHABET[parseInt(six.padEnd(6, "0"), 2)]).join("")}`;
}
