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
} from "@/lib/roster";
import type { RecordIssue } from "@/lib/store";
import { actionFor, anything, form, id } from "../_door/action-for";
import { accountAnswer, recordSaid } from "../_door/answer";
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

export const addPersonAction = actionFor(
  "people.manage",
  [anything, form],
  async ({ pen }, _, form): Promise<Answer<Said>> => {
    return answer(await addPerson(pen, personOf(form)), `${textOf(form, "name")} was added.`);
  },
);

export const changePersonAction = actionFor(
  "people.manage",
  [id, anything, form],
  async ({ pen, db }, id, _, form): Promise<Answer<Said>> => {
    if (textOf(form, "role") !== "owner" && (await isLastOwner(db, id))) return lastOwner;
    return answer(await changePerson(pen, id, personOf(form)), "Saved.");
  },
);

export const openAccountAction = actionFor(
  "people.manage",
  [id, anything, form],
  async ({ pen, db }, id, _, form): Promise<Answer<Said>> => {
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
  },
);

export const closeAccountAction = actionFor(
  "people.manage",
  [id],
  async ({ pen, db }, id): Promise<Answer<Said>> => {
    const person = await getPerson(db, id);
    if (!person?.userId) return refused("no-account", "This person has no account.");
    if (await isLastOwner(db, id)) return lastOwner;
    const untied = await setAccount(pen, id, null);
    if (untied.ok) await closeAccount(db, person.userId);
    return answer(untied, "The account is closed.");
  },
);

/** Where the name stands in texts that the removal leaves alone. */
export const lookForNameAction = actionFor(
  "people.manage",
  [id],
  async ({ db }, id): Promise<readonly NamePlace[]> => {
    return placesOfName(db, id);
  },
);

export const removePersonAction = actionFor(
  "people.manage",
  [id, anything, form],
  async ({ pen, db }, id, _, form): Promise<Answer<Said>> => {
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
  },
);

const lastOwner = accountAnswer<never>(fail(issue("last-owner")));

/** Without an owner who can sign in, nobody could ever open an account again over the network. */
async function isLastOwner(db: Db, id: string): Promise<boolean> {
  const owners = (await listPeople(db, { role: "owner" })).filter(({ userId }) => userId !== null);
  return owners.length === 1 && owners[0]?.id === id;
}
