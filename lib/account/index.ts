import "server-only";

export { closeAccount, openAccount, passphraseFits, setPassphrase } from "./accounts";
export { accountSentence, type AccountIssue } from "./issue";
export { isLoopbackHost } from "./loopback";
export { accountsRequired, readActor } from "./read-actor";
export { signIn, signOut } from "./sign-in";
export { makeThrottle, passphraseLimit } from "./throttle";
export { endToken, listTokens, makeToken } from "./tokens";
