"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { confirmKey, endPaperCertificate, makePaperCertificate, uploadPaperCertificate } from "@/lib/keys";
import { actionFor, anything, form, id } from "../_door/action-for";
import { recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";

export const confirmKeyAction = actionFor(
  "people.manage",
  [id, anything, form],
  async ({ pen }, id, _, form): Promise<Answer<Said>> => {
    const said = { told: textOf(form, "told"), whose: textOf(form, "whose") };
    const confirmed = await confirmKey(pen, id, said, new Date());
    revalidatePath("/keys");
    return recordSaid(confirmed, "Confirmed: records by this key say so from now on.");
  },
);

/** A key and a certificate signed by itself, made here. */
export const makeCertificateAction = actionFor(
  "people.manage",
  [anything, form],
  async ({ pen }, _, sent): Promise<Answer<Said>> => {
    const made = await makePaperCertificate(pen, textOf(sent, "name"), new Date());
    revalidatePath("/keys");
    return recordSaid(made, "Made: signed records leave as signed PDFs from now on.");
  },
);

/** A certificate that somebody else issued, with its key. The passphrase opens the file here and is not kept. */
export const uploadCertificateAction = actionFor(
  "people.manage",
  [anything, form],
  async ({ pen }, _, sent): Promise<Answer<Said>> => {
    const file = sent.get("file");
    const bytes = file instanceof File ? new Uint8Array(await file.arrayBuffer()) : new Uint8Array();
    const read = { file: bytes, passphrase: textOf(sent, "passphrase") };
    const taken = await uploadPaperCertificate(pen, read, new Date());
    revalidatePath("/keys");
    return recordSaid(taken, "Taken: signed records leave as signed PDFs from now on.");
  },
);

export const endCertificateAction = actionFor(
  "people.manage",
  [anything, form],
  async ({ pen }): Promise<Answer<Said>> => {
    const ended = await endPaperCertificate(pen, new Date());
    revalidatePath("/keys");
    return recordSaid(ended, "Put out of use. PDFs made until now stay signed.");
  },
);
