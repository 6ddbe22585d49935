import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { openAccount, passphraseHash, signIn, writePassphrase } from "@/lib/account";
import { heldBytes } from "../../setup/held-bytes";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const owner = { signInName: "orla", passphrase: "a bead of slag and rain" };
const wrong = { ...owner, passphrase: "not this one at all" };

beforeAll(async () => {
  serveFrom(fresh().folder);
  const { db } = fresh();
  const account = await openAccount(db, owner.signInName);
  if (!account.ok) throw new Error("no account");
  const hash = await passphraseHash(db, account.value, owner.passphrase);
  if (!hash.ok) throw new Error("no passphrase");
  await db.$transaction((tx) => writePassphrase(tx, account.value, hash.value));
});

/** What a sign-in came to: ok, or the code of the refusal; with the key that a browser keeps after a good one. */
async function trying(account: typeof owner, address: string, at: number, known: string | null = null) {
  const headers = new Headers({ "x-forwarded-for": address, host: "shop:3000" });
  const done = await signIn(fresh().db, account, headers, at, known);
  return done.ok ? { said: "ok", known: done.value.known } : { said: done.issues[0]?.code, known: null };
}

const noted: string[] = [];
beforeEach(() => {
  vi.spyOn(console, "warn").mockImplementation((line: unknown) => void noted.push(String(line)));
});
afterEach(() => {
  vi.restoreAllMocks();
  noted.length = 0;
});

const HOUR = 3_600_000;

describe("signing in", () => {
  it("lets nobody else's tries keep the owner out: not at another address, nor beside them with a known browser", async () => {
    const first = await trying(owner, "10.0.0.1", 0);
    expect(first.said).toBe("ok");
    for (let i = 0; i < 40; i += 1) await trying(wrong, "10.0.0.66", 1000 + i);
    for (let i = 0; i < 14; i += 1) await trying({ ...wrong, signInName: `name${i}` }, "10.0.0.66", 1100 + i);
    expect((await trying(wrong, "10.0.0.66", 2000)).said).toBe("too-many-tries");
    expect((await trying(owner, "10.0.0.1", 2000)).said).toBe("ok");
    // Even from the very address of the guesser: the browser shows that this person signed in with it before.
    expect((await trying(owner, "10.0.0.66", 2000)).said).toBe("too-many-tries");
    expect((await trying(owner, "10.0.0.66", 2000, first.known)).said).toBe("ok");
    // What a browser keeps is for its own name, cannot be made up, and is no way around its own limit.
    expect((await trying({ ...owner, signInName: "other" }, "10.0.0.66", 2000, first.known)).said).toBe(
      "too-many-tries",
    );
    expect((await trying(owner, "10.0.0.66", 2000, `${first.known}x`)).said).toBe("too-many-tries");
    for (let i = 0; i < 7; i += 1) await trying(wrong, "10.0.0.66", 3000 + i, first.known);
    expect((await trying(owner, "10.0.0.66", 4000, first.known)).said).toBe("too-many-tries");
  });

  it("stops one address that sprays many names, and lets on later", async () => {
    const said: (string | undefined)[] = [];
    for (let i = 0; i < 40; i += 1)
      said.push((await trying({ ...wrong, signInName: `name${i}` }, "10.0.1.7", HOUR)).said);
    expect(said.filter((one) => one === "sign-in-refused").length).toBe(20);
    expect(said.at(-1)).toBe("too-many-tries");
    expect((await trying(owner, "10.0.1.7", 2 * HOUR)).said).toBe("ok");
  });

  it("counts a try before it is answered, so that a hundred at once get no further than one after the other", async () => {
    const all = await Promise.all(Array.from({ length: 12 }, () => trying(wrong, "10.0.2.9", 3 * HOUR)));
    expect(all.filter(({ said }) => said === "sign-in-refused").length).toBe(6);
  });

  it("refuses a name that can be none without keeping it, however long", async () => {
    const before = heldBytes();
    for (let i = 0; i < 60; i += 1)
      await trying({ ...wrong, signInName: `${i}`.padEnd(990_000, "ж") }, `10.1.${i}.1`, 4 * HOUR);
    // 60 names of 990 kB, two bytes a letter, would be 119 MB.
    expect(heldBytes() - before).toBeLessThan(20e6);
  });

  it("notes each refusal for whoever runs the server, with its address and without name or passphrase", async () => {
    for (let i = 0; i < 7; i += 1) await trying(wrong, "10.0.3.1", 5 * HOUR + i);
    const lines = noted.map((line) => JSON.parse(line) as Record<string, string>);
    expect(lines.map(({ refused, from }) => [refused, from])).toEqual([
      ...Array.from({ length: 6 }, () => ["sign-in-refused", "10.0.3.1"]),
      ["sign-in-throttled", "10.0.3.1"],
    ]);
    expect(noted.join("")).not.toMatch(/orla|not this one/);
  });
});
