"use server";

import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import { refused, type Answer } from "@/lib/base";
import { chooseOwnPassphrase } from "@/lib/roster";
import { anything, form, openAction } from "../_door/action-for";
import { passphraseAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { here } from "../_door/here";

export const changeOwnPassphraseAction = openAction(
  [anything, form],
  async (_, form): Promise<Answer<Said>> => {
    const { actor, pen } = await here();
    // A token is for programs; whoever changes a passphrase sits there themselves.
    if (actor.kind !== "person" || actor.scopes !== null) return refused("sign-in-first", "Sign in first.");
    const choice = { before: textOf(form, "before"), passphrase: textOf(form, "passphrase") };
    const set = await chooseOwnPassphrase(pen, actor.personId, choice, new Date());
    if (!set.ok) return passphraseAnswer(set);
    redirect("/sign-in");
  },
);
