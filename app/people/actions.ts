"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import { closeAccount, openAccount } from "@/lib/account";
import { fail, issue, ok, refused, type Answer, type Result } from "@/lib/base";
import {
  addPerson,
  changePerson,
  getPerson,
  giveOneTimeCode,
  isLastOwner,
  placesOfName,
  removePerson,
  setAccount,
  takeOffSecondFactor,
  type NamePlace,
} from "@/lib/roster";
import type { RecordIssue } from "@/lib/store";
import { actionFor, anything, form, id } from "../_door/action-for";
import { accountAnswer, passphraseAnswer, recordAnswer, recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";

function answer(result: Result<unknown, RecordIssue>, text: string): Answer<Said> {
  revalidatePath("/people");
  return recordSaid(result, text);
}

/** The ticked roles, one of them leading; none ticked is the least there is. */
function personOf(form: FormData) {
  const ticked = form.getAll("roles").map(String);
  const leads = textOf(form, "leads");
  const role = (ticked.includes(leads) ? leads : ticked[0]) ?? "welder";
  return { name: textOf(form, "name"), mark: textOf(form, "mark") || null, role, also: ticked };
}

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
  async ({ pen }, id, _, form): Promise<Answer<Said>> => {
    const changed = await changePerson(pen, id, personOf(form));
    return answer(changed, changed.ok && changed.value.keyToBegin ? keyText : "Saved.");
  },
);

const keyText =
  "Saved. They sign as soon as they have a key: it begins when they next choose their passphrase, under “Your account” or with a one-time code.";

/** Opens an account, or lets its holder choose another passphrase. Nobody sets the passphrase of somebody else. */
export const openAccountAction = actionFor(
  "people.manage",
  [id, anything, form],
  async ({ pen, db }, id, _, form): Promise<Answer<Said>> => {
    const person = await getPerson(db, id);
    if (!person) return accountAnswer(fail(issue("person-gone")));
    if (!person.userId) {
      const opened = await openAccount(db, textOf(form, "signInName"));
      if (!opened.ok) return accountAnswer(opened);
      const tied = await setAccount(pen, id, opened.value);
      // An account that belongs to nobody would only block its name.
      if (!tied.ok) {
        await closeAccount(db, opened.value);
        return answer(tied, "");
      }
    }
    const given = await giveOneTimeCode(pen, id, new Date());
    if (!given.ok) return passphraseAnswer(given);
    revalidatePath("/people");
    return ok({ text: codeText(given.value) });
  },
);

const codeText = ({ code, until }: { readonly code: string; readonly until: string }): string =>
  `One-time code: ${code}. Give it to them and to nobody else: with it they choose their passphrase under “Sign in”, “I have a code”. It works once, until ${until.slice(0, 10)}.`;

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

/** The phone is lost: the number from it is asked for no longer. */
export const takeOffSecondFactorAction = actionFor(
  "people.manage",
  [id],
  async ({ pen }, id): Promise<Answer<Said>> => {
    const done = await takeOffSecondFactor(pen, id);
    revalidatePath("/people");
    return done.ok
      ? ok({ text: "Taken off. Their passphrase alone opens the account." })
      : passphraseAnswer(done);
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

const lastOwner = recordAnswer<never>(fail(issue("last-owner")));
