/** `npm run -s account`: opens an account from the terminal, the first owner's above all. The passphrase is read from standard input. */
import { createInterface } from "node:readline/promises";
import { parseArgs } from "node:util";
import { accountSentence, closeAccount, openAccount } from "@/lib/account";
import { databaseUrl, openDb } from "@/lib/db";
import { roles, type Role } from "@/lib/people";
import { addPerson, removePerson, setAccount } from "@/lib/roster";
import { recordSentence } from "@/lib/store";

const use = `Opens an account.

  npm run -s account -- --role owner --name "Name" --sign-in name [--mark W-07]

Roles: ${roles.join(", ")}. The passphrase is asked for, or read as one line from standard input.
Toeline listens on the network only when an owner has an account.`;

const { values } = parseArgs({
  options: {
    role: { type: "string" },
    name: { type: "string" },
    "sign-in": { type: "string" },
    mark: { type: "string" },
    help: { type: "boolean" },
  },
});
const role = roles.find((one): one is Role => one === values.role);
if (values.help || !role || !values.name || !values["sign-in"]) {
  console.log(use);
  process.exit(values.help ? 0 : 2);
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

const db = openDb(databaseUrl());
const pen = { db, by: "system" };
try {
  const person = await addPerson(pen, { name: values.name, mark: values.mark ?? null, role });
  if (!person.ok) throw new Error(person.issues.map(recordSentence).join(" "));
  const account = await openAccount(db, { signInName: values["sign-in"], passphrase: await passphrase() });
  if (!account.ok) {
    await removePerson(pen, person.value.id, new Date());
    throw new Error(account.issues.map(accountSentence).join(" "));
  }
  const tied = await setAccount(pen, person.value.id, account.value);
  if (!tied.ok) {
    await closeAccount(db, account.value);
    throw new Error(tied.issues.map(recordSentence).join(" "));
  }
  console.log(`${values.name} signs in as ${values["sign-in"].toLowerCase()} (${role}).`);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 2;
} finally {
  await db.$disconnect();
}
