import { fingerprint } from "@/lib/signature";
import type { Signature } from "./signed-record";

const day = (at: string): string => `${at.slice(0, 10)}, ${at.slice(11, 16)} UTC`;

/** Who gave a one-time code, as the log names people: never by a personal name. */
function giverText(by: string): string {
  if (by === "owner") return "the owner at that machine";
  return by === "system" ? "somebody at that machine's terminal" : by.replace(/^person:/, "person ");
}

/** How the passphrase that opens a signer's key was last chosen. */
export function passphraseText(setBy: string): string {
  if (setBy === "own") return "by the signer, who knew the one before";
  if (setBy.startsWith("code:"))
    return `with a one-time code that ${giverText(setBy.slice("code:".length))} gave`;
  return "by whoever knew the one before, which somebody else may have set";
}

/** What a record says of the key it is signed by; null in one of before keys were kept. */
export function keyWords({ key }: Signature): string | null {
  if (!key) return null;
  return `Key ${fingerprint(key.id)}, ${key.algorithm}, in use since ${day(key.since)}; its passphrase was last set on ${day(key.passphraseSetAt)} ${passphraseText(key.passphraseSetBy)}.`;
}
