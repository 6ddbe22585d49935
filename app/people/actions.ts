"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import { closeAccount, openAccount, setPassphrase } from "@/lib/account";
import { fail, issue, ok, refused, type Answer, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import {
  addPerson,
  changePerson,
  getPerson,
  listPeople,
  notePassphrase,
  placesOfName,
  removePerson,
  setAccount,
  type NamePlace,
  type RecordIssue,
} from "@/lib/record";
import { accountAnswer, recordSaid } from "../_door/answer";
import { actionFor } from "../_door/here";
import { textOf } from "../_door/form-text";

function answer(result: Result<unknown, RecordIssue>, text: string): Answer<Said> {
  revalidatePath("/people");
  return recordSaid(result, text);
}

const personOf = (form: FormData) => ({
  name: textOf(form, "name"),
  mark: textOf(form, "mark") || null,
  role: textOf(form, "role"),
});

export async function addPersonAction(_: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const { pen } = await actionFor("people.manage");
  return answer(await addPerson(pen, personOf(form)), `${textOf(form, "name")} was added.`);
}

export async function changePersonAction(id: string, _: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const { pen, db } = await actionFor("people.manage");
  if (textOf(form, "role") !== "owner" && (await isLastOwner(db, id))) return lastOwner;
  return answer(await changePerson(pen, id, personOf(form)), "Saved.");
}

export async function openAccountAction(id: string, _: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const { pen, db } = await actionFor("people.manage");
  const person = await getPerson(db, id);
  if (!person) return accountAnswer(fail(issue("person-gone")));
  const passphrase = textOf(form, "passphrase");
  if (person.userId) {
    const set = await setPassphrase(db, person.userId, passphrase);
    if (set.ok) await notePassphrase(pen, id);
    return set.ok
      ? ok({ text: "The passphrase was changed; open sessions have ended." })
      : accountAnswer(set);
  }
  const opened = await openAccount(db, { signInName: textOf(form, "signInName"), passphrase });
  if (!opened.ok) return accountAnswer(opened);
  const tied = await setAccount(pen, id, opened.value);
  // An account that belongs to nobody would only block its name.
  if (!tied.ok) await closeAccount(db, opened.value);
  return answer(tied, `The account is open: ${textOf(form, "signInName").toLowerCase()}.`);
}

export async function closeAccountAction(id: string): Promise<Answer<Said>> {
  const { pen, db } = await actionFor("people.manage");
  const person = await getPerson(db, id);
  if (!person?.userId) return refused("no-account", "This person has no account.");
  if (await isLastOwner(db, id)) return lastOwner;
  const untied = await setAccount(pen, id, null);
  if (untied.ok) await closeAccount(db, person.userId);
  return answer(untied, "The account is closed.");
}

/** Where the name stands in texts that the removal leaves alone. */
export async function lookForNameAction(id: string): Promise<readonly NamePlace[]> {
  const { db } = await actionFor("people.manage");
  return placesOfName(db, id);
}

export async function removePersonAction(id: string, _: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const { pen, db } = await actionFor("people.manage");
  if (await isLastOwner(db, id)) return lastOwner;
  const places = textOf(form, "leave") === "yes" ? [] : await placesOfName(db, id);
  if (places.length > 0)
    return refused(
      "name-elsewhere",
      `The name stands in ${places.length === 1 ? "1 other text" : `${places.length} other texts`}, so nothing was removed. Look where, edit what is to go, or tick that it is left there.`,
    );
  return answer(
    await removePerson(pen, id, new Date()),
    "Removed: name, account and words are gone; beads and signed records stay.",
  );
}

const lastOwner = accountAnswer<never>(fail(issue("last-owner")));

/** Without an owner who can sign in, nobody could ever open an account again over the network. */
async function isLastOwner(db: Db, id: string): Promise<boolean> {
  const owners = (await listPeople(db, { role: "owner" })).filter(({ userId }) => userId !== null);
  return owners.length === 1 && owners[0]?.id === id;
}
