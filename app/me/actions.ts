"use server";

import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import { passphraseFits, setPassphrase } from "@/lib/account";
import { refused, type Answer } from "@/lib/base";
import { getPerson, notePassphrase } from "@/lib/roster";
import { anything, form, openAction } from "../_door/action-for";
import { accountAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { here } from "../_door/here";

export const changeOwnPassphraseAction = openAction(
  [anything, form],
  async (_, form): Promise<Answer<Said>> => {
    const { actor, db, pen } = await here();
    // A token is for programs; whoever changes a passphrase sits there themselves.
    const self =
      actor.kind === "person" && actor.scopes === null ? await getPerson(db, actor.personId) : null;
    if (!self?.userId) return refused("sign-in-first", "Sign in first.");
    if (!(await passphraseFits(db, self.userId, textOf(form, "before"))))
      return refused("passphrase-other", "The passphrase until now is another one. Nothing was changed.");
    const set = await setPassphrase(db, self.userId, textOf(form, "passphrase"));
    if (!set.ok) return accountAnswer(set);
    await notePassphrase(pen, self.id);
    redirect("/sign-in");
  },
);
