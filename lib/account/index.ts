import "server-only";

export {
  checkAccount,
  closeAccount,
  openAccount,
  passphraseFits,
  setPassphrase,
  type NewAccount,
} from "./accounts";
export { PASSPHRASE_LENGTH } from "./auth";
export { accountIssueCodes, accountSentence, type AccountIssue, type AccountIssueCode } from "./issue";
export { isLoopbackHost } from "./loopback";
export { accountsRequired, readActor } from "./read-actor";
export { signIn, signOut } from "./sign-in";
export { makeThrottle, passphraseLimit, type Throttle } from "./throttle";
export { endToken, listTokens, makeToken, readToken, type TokenRecord } from "./tokens";
