"use server";

import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import { signIn, signOut } from "@/lib/account";
import type { Answer } from "@/lib/base";
import { db } from "@/lib/db";
import { accountAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

export async function signInAction(_: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const account = { signInName: textOf(form, "signInName"), passphrase: textOf(form, "passphrase") };
  const done = await signIn(db(), account, await headers(), Date.now());
  if (!done.ok) return accountAnswer(done);
  redirect("/");
}

export async function signOutAction(): Promise<void> {
  await signOut(db(), await headers());
  redirect("/sign-in");
}
