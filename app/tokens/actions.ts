"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import { endToken, makeToken } from "@/lib/account";
import { ok, refused, type Answer } from "@/lib/base";
import { writeTogether } from "@/lib/db";
import { scopes } from "@/lib/people";
import { getPerson } from "@/lib/roster";
import { writeLog } from "@/lib/store";
import { anything, form, id, personActionFor } from "../_door/action-for";
import { accountAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

export const makeTokenAction = personActionFor(
  "token.manage",
  [id, anything, form],
  async ({ db, pen }, personId, _, form): Promise<Answer<Said>> => {
    const person = await getPerson(db, personId);
    if (!person?.userId) return refused("no-account", "This person has no account.");
    const asked = form.getAll("scopes");
    const given = scopes.filter((scope) => asked.includes(scope));
    if (given.length === 0) return refused("no-scope", "Tick at least one thing the token may do.");
    const days = Number(textOf(form, "days"));
    const made = await makeToken(db, person.userId, {
      name: textOf(form, "name"),
      scopes: given,
      days: Number.isInteger(days) && days > 0 ? Math.min(days, 3650) : null,
    });
    if (!made.ok) return accountAnswer(made);
    await writeTogether(db, (tx) =>
      writeLog(tx, {
        by: pen.by,
        subject: `person:${personId}`,
        action: "token.made",
        detail: { scopes: given },
      }),
    );
    revalidatePath("/tokens");
    return ok({ text: "Copy it now, it is shown this once:", once: made.value });
  },
);

export const endTokenAction = personActionFor(
  "token.manage",
  [id, id],
  async ({ db, pen }, personId, tokenId): Promise<Answer<Said>> => {
    const person = await getPerson(db, personId);
    const ended = person?.userId ? await endToken(db, person.userId, tokenId) : null;
    if (!ended?.ok) return refused("token-gone", "This token does not exist any more.");
    await writeTogether(db, (tx) =>
      writeLog(tx, { by: pen.by, subject: `person:${personId}`, action: "token.ended" }),
    );
    revalidatePath("/tokens");
    return ok({ text: "Ended." });
  },
);
