type Refused =
  | "sign-in-refused"
  | "sign-in-throttled"
  | "second-factor-refused"
  | "passphrase-refused"
  | "token-refused"
  | "hand-in-refused";

/**
 * One line for whoever runs the server, that somebody was refused and from where. No name and no passphrase: people type
 * the one into the field of the other.
 */
export function noteRefusal(what: Refused, address: string): void {
  console.warn(JSON.stringify({ at: new Date().toISOString(), refused: what, from: address }));
}
