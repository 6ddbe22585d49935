/** `npm run -s account`: opens an account from the terminal, the first owner's above all. The passphrase is read from standard input. */
import { createInterface } from "node:readline/promises";
import { parseArgs } from "node:util";
import { accountSentence, closeAccount, isAccountIssue, openAccount } from "@/lib/account";
import type { Issue } from "@/lib/base";
import { databaseUrl, openDb } from "@/lib/db";
import { heldRoles, roles, signs, type Role } from "@/lib/people";
import {
  addPerson,
  chooseByCode,
  giveOneTimeCode,
  removePerson,
  setAccount,
  takeOffSecondFactor,
} from "@/lib/roster";
import { recordSentence, type RecordIssue } from "@/lib/store";
import { needSite } from "./site-flag";

const use = `Opens an account.

  npm run -s account -- --role owner --name "Name" --sign-in name [--mark W-07] [--also inspector,welder]

  npm run -s account -- --take-off-second-factor --sign-in name     a lost phone: the passphrase alone opens the account

Roles: ${roles.join(", ")}; --role is the one that leads, --also those held besides. The passphrase is asked for, or read as one line from standard input. Who
inspects gets a one-time code instead, and chooses a passphrase that nobody else knows under “Sign in”, “I have a code”.
Toeline listens on the network only when an owner has an account. Where several sites are served: --site NAME.`;

needSite();
const { values } = parseArgs({
  options: {
    role: { type: "string" },
    also: { type: "string", multiple: true },
    name: { type: "string" },
    "sign-in": { type: "string" },
    mark: { type: "string" },
    "take-off-second-factor": { type: "boolean" },
    help: { type: "boolean" },
  },
});
if (values["take-off-second-factor"] && values["sign-in"]) {
  process.exit(await takeOff(values["sign-in"]));
}
const named = (word: string | undefined): Role | undefined => roles.find((one) => one === word);
const role = named(values.role);
const others = (values.also ?? []).flatMap((text) => text.split(/[,+; ]+/)).filter(Boolean);
const also = others.map(named).filter((one) => one !== undefined);
if (values.help || !role || also.length < others.length || !values.name || !values["sign-in"]) {
  console.log(use);
  process.exit(values.help ? 0 : 2);
}

/** Takes the second factor off an account by its sign-in name; the exit code. */
async function takeOff(signInName: string): Promise<number> {
  const db = openDb(databaseUrl());
  try {
    const where = { username: signInName.toLowerCase() };
    const user = await db.user.findUnique({ where, select: { id: true } });
    const person = user && (await db.person.findUnique({ where: { userId: user.id }, select: { id: true } }));
    const done = person && (await takeOffSecondFactor({ db, by: "system" }, person.id));
    if (done?.ok) console.log(`${signInName} signs in with the passphrase alone.`);
    else console.error(`${signInName} has no account that asks for a number from a phone.`);
    return done?.ok ? 0 : 2;
  } finally {
    await db.$disconnect();
  }
}

async function passphrase(): Promise<string> {
  const lines = createInterface({ input: process.stdin, output: process.stderr, terminal: false });
  if (process.stdin.isTTY) process.stderr.write("Passphrase (at least 10 characters): ");
  for await (const line of lines) {
    lines.close();
    return line;
  }
  return "";
}

const said = (issues: readonly Issue[]): Error =>
  new Error(
    issues
      .map((one) => (isAccountIssue(one) ? accountSentence(one) : recordSentence(one as RecordIssue)))
      .join(" "),
  );

const db = openDb(databaseUrl());
const pen = { db, by: "system" };
try {
  const person = await addPerson(pen, { name: values.name, mark: values.mark ?? null, role, also });
  if (!person.ok) throw said(person.issues);
  const { id } = person.value;
  const hasKey = signs(person.value);
  const account = await openAccount(db, values["sign-in"]);
  if (!account.ok) {
    await removePerson(pen, id, new Date());
    throw said(account.issues);
  }
  const tied = await setAccount(pen, id, account.value);
  const given = tied.ok ? await giveOneTimeCode(pen, id, new Date()) : tied;
  const chosen =
    given.ok && !hasKey ? await chooseByCode(db, given.value.code, await passphrase(), new Date()) : given;
  if (!chosen.ok) {
    await removePerson(pen, id, new Date());
    await closeAccount(db, account.value);
    throw said(chosen.issues);
  }
  console.log(
    `${values.name} signs in as ${values["sign-in"].toLowerCase()} (${heldRoles(person.value).join(", ")}).`,
  );
  if (hasKey && given.ok)
    console.log(`One-time code: ${given.value.code} (works once, until ${given.value.until.slice(0, 10)}).`);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 2;
} finally {
  await db.$disconnect();
}
