"use server";

import { redirect } from "next/navigation";
import type { FormAnswer } from "@/components/ui";
import { accountSentence, passphraseFits, setPassphrase } from "@/lib/account";
import { getPerson, notePassphrase } from "@/lib/record";
import { textOf } from "../_door/form-text";
import { here } from "../_door/here";

export async function changeOwnPassphraseAction(_: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { actor, db, pen } = await here();
  // A token is for programs; whoever changes a passphrase sits there themselves.
  const self = actor.kind === "person" && actor.scopes === null ? await getPerson(db, actor.personId) : null;
  if (!self?.userId) return { done: false, text: "Sign in first." };
  if (!(await passphraseFits(db, self.userId, textOf(form, "before"))))
    return { done: false, text: "The passphrase until now is another one. Nothing was changed." };
  const set = await setPassphrase(db, self.userId, textOf(form, "passphrase"));
  if (!set.ok) return { done: false, text: set.issues.map(accountSentence).join(" ") };
  await notePassphrase(pen, self.id);
  redirect("/sign-in");
}
