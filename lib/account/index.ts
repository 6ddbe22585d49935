import "server-only";

export { closeAccount, openAccount, passphraseFits, passphraseHash, writePassphrase } from "./accounts";
export { accountSentence, isAccountIssue, tooMany, type AccountIssue } from "./issue";
export {
  codeLimit,
  passphraseLimit,
  photosByCodeLimit,
  photosByHandLimit,
  repliesByHandInLimit,
} from "./limits";
export { addressOf } from "./address";
export { KNOWN_COOKIE } from "./known-browser";
export { noteRefusal } from "./note-refusal";
export { overTls, publicAddress, tellOwnAddress } from "./own-address";
export { isLoopbackHost } from "./loopback";
export { codeHolder, giveCode, takeCode } from "./one-time-code";
export { accountsRequired, readActor, waitOfToken } from "./read-actor";
export {
  beginSecondFactor,
  confirmSecondFactor,
  endSecondFactor,
  hasSecondFactor,
  secondFactorState,
  showsSecondFactor,
} from "./second-factor";
export { endSession, listSessions } from "./sessions";
export { signIn, signOut } from "./sign-in";
export { makeThrottle, takeAll } from "./throttle";
export { endToken, listTokens, makeToken } from "./tokens";
