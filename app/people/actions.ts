"use server";

import { revalidatePath } from "next/cache";
import type { FormAnswer } from "@/components/ui";
import { accountSentence, closeAccount, openAccount, setPassphrase, type AccountIssue } from "@/lib/account";
import type { Issue, Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import {
  addPerson,
  changePerson,
  getPerson,
  listPeople,
  notePassphrase,
  placesOfName,
  recordSentence,
  removePerson,
  setAccount,
  type NamePlace,
  type RecordIssue,
} from "@/lib/record";
import { actionFor } from "../_door/here";
import { textOf } from "../_door/form-text";

const refused = (text: string): FormAnswer => ({ done: false, text });

function answer(result: Result<unknown, RecordIssue>, text: string): FormAnswer {
  revalidatePath("/people");
  return result.ok ? { done: true, text } : refused(result.issues.map(recordSentence).join(" "));
}

const personOf = (form: FormData) => ({
  name: textOf(form, "name"),
  mark: textOf(form, "mark") || null,
  role: textOf(form, "role"),
});

export async function addPersonAction(_: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen } = await actionFor("people.manage");
  return answer(await addPerson(pen, personOf(form)), `${textOf(form, "name")} was added.`);
}

export async function changePersonAction(id: string, _: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen, db } = await actionFor("people.manage");
  if (textOf(form, "role") !== "owner" && (await isLastOwner(db, id))) return refused(lastOwner);
  return answer(await changePerson(pen, id, personOf(form)), "Saved.");
}

export async function openAccountAction(id: string, _: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen, db } = await actionFor("people.manage");
  const person = await getPerson(db, id);
  if (!person) return refused(accountSentence(gone));
  const passphrase = textOf(form, "passphrase");
  if (person.userId) {
    const set = await setPassphrase(db, person.userId, passphrase);
    if (set.ok) await notePassphrase(pen, id);
    return set.ok
      ? { done: true, text: "The passphrase was changed; open sessions have ended." }
      : refused(set.issues.map(accountSentence).join(" "));
  }
  const opened = await openAccount(db, { signInName: textOf(form, "signInName"), passphrase });
  if (!opened.ok) return refused(opened.issues.map(accountSentence).join(" "));
  const tied = await setAccount(pen, id, opened.value);
  // An account that belongs to nobody would only block its name.
  if (!tied.ok) await closeAccount(db, opened.value);
  return answer(tied, `The account is open: ${textOf(form, "signInName").toLowerCase()}.`);
}

export async function closeAccountAction(id: string): Promise<FormAnswer> {
  const { pen, db } = await actionFor("people.manage");
  const person = await getPerson(db, id);
  if (!person?.userId) return refused("This person has no account.");
  if (await isLastOwner(db, id)) return refused(lastOwner);
  const untied = await setAccount(pen, id, null);
  if (untied.ok) await closeAccount(db, person.userId);
  return answer(untied, "The account is closed.");
}

/** Where the name stands in texts that the removal leaves alone. */
export async function lookForNameAction(id: string): Promise<readonly NamePlace[]> {
  const { db } = await actionFor("people.manage");
  return placesOfName(db, id);
}

export async function removePersonAction(id: string, _: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen, db } = await actionFor("people.manage");
  if (await isLastOwner(db, id)) return refused(lastOwner);
  const places = textOf(form, "leave") === "yes" ? [] : await placesOfName(db, id);
  if (places.length > 0)
    return refused(
      `The name stands in ${places.length === 1 ? "1 other text" : `${places.length} other texts`}, so nothing was removed. Look where, edit what is to go, or tick that it is left there.`,
    );
  return answer(
    await removePerson(pen, id, new Date()),
    "Removed: name, account and words are gone; beads and signed records stay.",
  );
}

const gone: AccountIssue = { code: "person-gone", path: [], data: {} } satisfies Issue<"person-gone">;
const lastOwner = accountSentence({ code: "last-owner", path: [], data: {} });

/** Without an owner who can sign in, nobody could ever open an account again over the network. */
async function isLastOwner(db: Db, id: string): Promise<boolean> {
  const owners = (await listPeople(db, { role: "owner" })).filter(({ userId }) => userId !== null);
  return owners.length === 1 && owners[0]?.id === id;
}
