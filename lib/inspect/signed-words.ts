import { mayNameSigner, standingTitle, type Standing } from "@/lib/signature";
import type { Signature } from "./signed-record";

/** How far a signed text can be relied on, and the local name that goes with it. */
export interface Signed {
  readonly standing: Standing;
  /** Null: not to be shown, or removed since. */
  readonly signer: string | null;
}

/** "signed, revision 1", or what has to be said instead. */
export function revisionTitle({ standing }: Signed, revision: number): string {
  const title = standingTitle(standing);
  return `${title}, revision ${revision}`;
}

/** Who signed. Where nothing here speaks for a name, the text's own words are said to be the text's. */
export function signerWords({ standing, signer }: Signed, { signer: { mark } }: Signature): string {
  const identification = `identification ${mark ?? "none"}`;
  return mayNameSigner(standing)
    ? `${signer ?? "An inspector whose name was removed"}, ${identification}`
    : `Whoever the text calls ${identification}`;
}

/** The role in which it was signed: records are signed in one alone. Empty where nothing here speaks for it. */
export const signedRole = ({ standing }: Signed): string =>
  mayNameSigner(standing) ? "Signed in the role of inspector." : "";

/** Title over a result: of what was only imported it is the text's result, not one that anybody here stands by. */
export const resultTitle = (signed: Signed | null): string =>
  signed === null || mayNameSigner(signed.standing) ? "Result" : "Result, as the imported text has it";

/** What a list says of an inspection; how far a signed text can be relied on stands on its own page. */
export function inspectionState(one: {
  readonly draft: { readonly open: boolean };
  readonly signed: number;
  readonly imported: boolean;
}): string {
  if (one.draft.open) return "draft";
  return `${one.imported ? "imported" : "signed"}, revision ${one.signed}`;
}
