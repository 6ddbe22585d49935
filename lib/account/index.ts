import "server-only";

export { closeAccount, openAccount, passphraseFits, setPassphrase } from "./accounts";
export { accountSentence, tooMany, type AccountIssue } from "./issue";
export { passphraseLimit, photosByCodeLimit, photosByHandLimit, repliesByHandInLimit } from "./limits";
export { addressOf } from "./address";
export { KNOWN_COOKIE } from "./known-browser";
export { noteRefusal } from "./note-refusal";
export { behindProxy, tellOwnAddress } from "./own-address";
export { isLoopbackHost } from "./loopback";
export { accountsRequired, readActor } from "./read-actor";
export { signIn, signOut } from "./sign-in";
export { makeThrottle } from "./throttle";
export { endToken, listTokens, makeToken } from "./tokens";
