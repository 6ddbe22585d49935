"use server";

import { cookies, headers } from "next/headers";
import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import { KNOWN_COOKIE, overTls, signIn, signOut } from "@/lib/account";
import type { Answer } from "@/lib/base";
import { db } from "@/lib/db";
import { anything, form, openAction } from "../_door/action-for";
import { accountAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

export const signInAction = openAction([anything, form], async (_, form): Promise<Answer<Said>> => {
  const account = {
    signInName: textOf(form, "signInName"),
    passphrase: textOf(form, "passphrase"),
    number: textOf(form, "number"),
  };
  const kept = await cookies();
  const known = kept.get(KNOWN_COOKIE)?.value ?? null;
  const done = await signIn(db(), account, await headers(), Date.now(), known);
  if (!done.ok) return accountAnswer(done);
  kept.set(KNOWN_COOKIE, done.value.known, {
    httpOnly: true,
    sameSite: "lax",
    secure: overTls(),
    maxAge: 60 * 60 * 24 * 365,
  });
  redirect("/");
});

export async function signOutAction(): Promise<void> {
  await signOut(db(), await headers());
  redirect("/sign-in");
}
