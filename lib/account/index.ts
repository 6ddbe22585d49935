import "server-only";

export { closeAccount, openAccount, passphraseFits, passphraseHash, writePassphrase } from "./accounts";
export { accountSentence, isAccountIssue, tooMany, type AccountIssue } from "./issue";
export { passphraseLimit, photosByCodeLimit, photosByHandLimit, repliesByHandInLimit } from "./limits";
export { isLoopbackHost } from "./loopback";
export { codeHolder, giveCode, takeCode } from "./one-time-code";
export { accountsRequired, readActor } from "./read-actor";
export { signIn, signOut } from "./sign-in";
export { makeThrottle } from "./throttle";
export { endToken, listTokens, makeToken } from "./tokens";
