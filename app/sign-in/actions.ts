"use server";

import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { FormAnswer } from "@/components/ui";
import { accountSentence, signIn, signOut } from "@/lib/account";
import { db } from "@/lib/db";
import { textOf } from "../_door/form-text";

export async function signInAction(_: FormAnswer, form: FormData): Promise<FormAnswer> {
  const account = { signInName: textOf(form, "signInName"), passphrase: textOf(form, "passphrase") };
  const done = await signIn(db(), account, await headers(), Date.now());
  if (!done.ok) return { done: false, text: done.issues.map(accountSentence).join(" ") };
  redirect("/");
}

export async function signOutAction(): Promise<void> {
  await signOut(db(), await headers());
  redirect("/sign-in");
}
