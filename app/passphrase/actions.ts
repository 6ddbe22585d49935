"use server";

import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import { accountsRequired } from "@/lib/account";
import { ok, type Answer } from "@/lib/base";
import { db } from "@/lib/db";
import { chooseByCode } from "@/lib/roster";
import { anything, form, openAction } from "../_door/action-for";
import { passphraseAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

export const chooseByCodeAction = openAction([anything, form], async (_, form): Promise<Answer<Said>> => {
  const chosen = await chooseByCode(db(), textOf(form, "code"), textOf(form, "passphrase"), new Date());
  if (!chosen.ok) return passphraseAnswer(chosen);
  if (accountsRequired()) redirect("/sign-in");
  return ok({ text: "Your passphrase is chosen. Nobody else knows it, and the code is used up." });
});
