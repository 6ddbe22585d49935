import { scryptSync } from "node:crypto";
import { hashPassword as ofTheLibrary } from "better-auth/crypto";
import { expect, it } from "vitest";
import { passwords } from "@/lib/account/passwords";

const said = "a bead of slag and rain";

it("is kept as scrypt at the stated cost, with a salt of its own, however its letters are composed", async () => {
  const kept = await passwords.hash(said);
  const [salt = "", key] = kept.split(":");
  expect(salt).toMatch(/^[0-9a-f]{32}$/);
  const asStated = scryptSync(said, salt, 64, { N: 16384, r: 16, p: 1, maxmem: 64 * 2 ** 20 });
  expect(key).toBe(asStated.toString("hex"));
  expect(await passwords.verify({ hash: kept, password: said })).toBe(true);
  expect(await passwords.verify({ hash: kept, password: `${said}!` })).toBe(false);
  const composed = await passwords.hash("café at dawn");
  expect(await passwords.verify({ hash: composed, password: "cafe\u0301 at dawn" })).toBe(true);
});

it("is that of every account opened before: the accounts library's own", async () => {
  expect(await passwords.verify({ hash: await ofTheLibrary(said), password: said })).toBe(true);
});
