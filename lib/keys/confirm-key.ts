import { fail, issue, ok, type Result } from "@/lib/base";
import { fingerprint } from "@/lib/signature";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

const digits = (text: string): string => text.toLowerCase().replaceAll(/[^0-9a-f]/g, "");

/**
 * The owner's word that a key which came with an archive is whose they say, after they were told its fingerprint by its
 * holder. They type what they were told, so that nobody confirms what they never compared. `whose`: their own words.
 */
export async function confirmKey(
  pen: Pen,
  keyId: string,
  { told, whose }: { readonly told: string; readonly whose: string },
  now: Date,
): Promise<Result<null, RecordIssue>> {
  const said = whose.trim();
  if (said.length < 2 || said.length > 120) return fail(issue("key-whose-missing", ["whose"]));
  return writing(pen, async (tx, log) => {
    const key = await tx.signingKey.findUnique({ where: { id: keyId }, select: { origin: true } });
    if (key?.origin !== "archive") return fail(issue("key-gone"));
    if (digits(told) !== digits(fingerprint(keyId))) return fail(issue("key-told-otherwise", ["told"]));
    const event = { id: newId(), keyId, what: "confirmed", at: now.toISOString(), reason: "compared" };
    await tx.keyEvent.create({ data: { ...event, whose: said } });
    await log(`key:${keyId}`, "key.confirmed");
    return ok(null);
  });
}
