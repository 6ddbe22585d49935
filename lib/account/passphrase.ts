import { ZxcvbnFactory } from "@zxcvbn-ts/core";
import { adjacencyGraphs, dictionary } from "@zxcvbn-ts/language-common";
import { issue } from "@/lib/base";
import { PASSPHRASE_LENGTH } from "./auth";
import type { AccountIssue } from "./issue";

/** Of the library's five marks the first that stands for more than a hundred million guesses. */
const LEAST_SCORE = 3;

let judge: ZxcvbnFactory | null = null;

/**
 * What is wrong with a passphrase: too short, or among what is guessed first. That is everything on the library's list of
 * the commonest passwords, keyboard runs, dates and repeats, and what is known of its owner (`words`), however they are
 * put together (NIST SP 800-63B, 5.1.1.2; OWASP ASVS 5.0, 6.2.4).
 */
export function passphraseIssues(passphrase: string, words: readonly string[] = []): readonly AccountIssue[] {
  if (passphrase.length < PASSPHRASE_LENGTH.least) return [issue("passphrase-short", ["passphrase"])];
  judge ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
  // The rest of a very long one makes it no easier to guess, and would take the judge long.
  const { score } = judge.check(passphrase.slice(0, 64), ["toeline", ...words]);
  return score < LEAST_SCORE ? [issue("passphrase-common", ["passphrase"])] : [];
}
