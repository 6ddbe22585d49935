"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { SavedAndSaid, Stored } from "@/components/saving";
import type { Said } from "@/components/ui";
import { makeThrottle, passphraseFits, passphraseLimit } from "@/lib/account";
import { BeadJudgementSchema, type BeadReading } from "@/lib/assess";
import { fail, issue, ok, refused, type Answer } from "@/lib/base";
import { getBead, saveBead } from "@/lib/beads";
import type { InspectionDraft } from "@/lib/inspect";
import { personIdOf, signs, type Actor } from "@/lib/people";
import { correctInspection, getInspection, saveInspection, signInspection } from "@/lib/jobs";
import { getPerson } from "@/lib/roster";
import { actionFor, anything, basedOn, beadActionFor, form, id } from "../_door/action-for";
import { accountAnswer, recordAnswer, recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";

/** Wrong passphrases at signing, by person. */
const tries = makeThrottle("signing-passphrase", passphraseLimit);

export const saveInspectionAction = actionFor(
  "job.write",
  [id, basedOn, anything],
  async ({ pen }, id, basedOn, draft): Promise<Answer<SavedAndSaid>> => {
    const saved = await saveInspection(pen, id, basedOn, draft);
    if (!saved.ok) return recordAnswer(saved);
    revalidatePath(`/inspections/${id}`, "layout");
    return ok({ text: "Saved.", revision: saved.value.revision });
  },
);

export const readInspectionAction = actionFor(
  "job.write",
  [id],
  async ({ db }, id): Promise<Answer<Stored<InspectionDraft>>> => {
    const now = await getInspection(db, id);
    return now
      ? ok({ revision: now.revision, content: now.draft })
      : recordAnswer(fail(issue("inspection-gone")));
  },
);

interface Readings {
  readonly readings: readonly BeadReading[];
}

/** What was read on one bead, from the screen of its weld: everything else of the bead stays as it is stored. */
export const saveReadingsAction = beadActionFor(
  "bead.write",
  [id, basedOn, anything],
  async ({ pen, db }, beadId, basedOn, sent): Promise<Answer<SavedAndSaid>> => {
    const parsed = BeadJudgementSchema.pick({ readings: true }).safeParse(sent);
    const bead = await getBead(db, beadId);
    if (!bead) return recordAnswer(fail(issue("bead-gone")));
    if (!parsed.success) return recordAnswer(fail(issue("bead-not-understood", [], { reason: "a reading" })));
    const judgement = { ...bead.content.judgement, readings: parsed.data.readings };
    const saved = await saveBead(pen, beadId, basedOn, { ...bead.content, judgement });
    if (!saved.ok) return recordAnswer(saved);
    revalidatePath("/inspections", "layout");
    return ok({ text: "Saved.", revision: saved.value.revision });
  },
);

export const readReadingsAction = beadActionFor(
  "bead.read",
  [id],
  async ({ db }, beadId): Promise<Answer<Stored<Readings>>> => {
    const now = await getBead(db, beadId);
    if (!now) return recordAnswer(fail(issue("bead-gone")));
    return ok({ revision: now.revision, content: { readings: now.content.judgement.readings } });
  },
);

export const correctInspectionAction = actionFor(
  "job.write",
  [id],
  async ({ pen }, id): Promise<Answer<Said>> => {
    const opened = await correctInspection(pen, id);
    revalidatePath(`/inspections/${id}`);
    return recordSaid(opened, "Open for correction.");
  },
);

/**
 * Where people sign in, only the one who is signed in signs, and never a token. On a machine without accounts whoever
 * sits there chooses an inspector, and that inspector's passphrase decides.
 */
function signerOf(actor: Actor, chosen: string): string | null {
  if (actor.kind === "owner-here") return chosen;
  return actor.kind === "person" && actor.scopes === null ? personIdOf(actor) : null;
}

export const signAction = actionFor(
  "record.read",
  [id, id, anything, form],
  async ({ db, actor, may }, id, seen, _, form): Promise<Answer<Said>> => {
    // Whoever may read the record reaches this; whether they may sign is decided next, for the signer themself.
    const signerId = signerOf(actor, textOf(form, "signer"));
    const person = signerId === null ? null : await getPerson(db, signerId);
    const mayAtAll =
      actor.kind === "owner-here" || (signerId !== null && may("record.sign", { personId: signerId }));
    if (!mayAtAll || !person || !signs(person) || !person.userId)
      return recordAnswer(fail(issue("sign-not-inspector")));
    const now = new Date();
    const seconds = await tries.take(db, person.id, now.getTime());
    if (seconds > 0) return accountAnswer(fail(issue("too-many-tries", [], { seconds })));
    const passphrase = textOf(form, "passphrase");
    if (!(await passphraseFits(db, person.userId, passphrase)))
      return refused(
        "passphrase-other",
        "This is not the passphrase of the inspector, so nothing was signed.",
      );
    await tries.giveBack(db, person.id, now.getTime());
    const signed = await signInspection(
      { db, by: `person:${person.id}` },
      {
        inspectionId: id,
        signerId: person.id,
        passphrase,
        seen,
        acknowledgement: textOf(form, "acknowledgement"),
        reason: textOf(form, "reason"),
        now,
      },
    );
    if (!signed.ok) return recordAnswer(signed);
    revalidatePath(`/inspections/${id}`);
    redirect(`/inspections/${id}/revisions/${signed.value.revision}`);
  },
);
