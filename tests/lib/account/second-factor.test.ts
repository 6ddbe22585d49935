import { base32 } from "@better-auth/utils/base32";
import { beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { hasSecondFactor, signIn } from "@/lib/account";
import {
  beginSecondFactor,
  confirmSecondFactor,
  secondFactorState,
  showsSecondFactor,
} from "@/lib/account/second-factor";
import { numberAt, stepAt, stepTyped } from "@/lib/account/totp";
import { addPerson, takeOffSecondFactor } from "@/lib/roster";
import { openAccountOf } from "../../setup/account";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const PASSPHRASE = "eleven copper kettles";
let userId = "";
let personId = "";
beforeAll(async () => {
  serveFrom(fresh().folder);
  vi.spyOn(console, "warn").mockImplementation(() => undefined);
  const person = await addPerson(fresh().pen, { name: "Vesna Ling", mark: null, role: "owner" });
  if (!person.ok) throw new Error("no person");
  personId = person.value.id;
  userId = await openAccountOf(fresh().pen, personId, "vesna", PASSPHRASE);
});

/** RFC 6238, appendix B: secret "12345678901234567890", SHA-1; the last six of its eight digits. */
const PUBLISHED: readonly (readonly [seconds: number, number: string])[] = [
  [59, "287082"],
  [1_111_111_109, "081804"],
  [1_111_111_111, "050471"],
  [1_234_567_890, "005924"],
  [2_000_000_000, "279037"],
  [20_000_000_000, "353130"],
];

let minutes = 0;
/** A moment of its own for each try, so that no number is another's. */
const later = () => new Date(Date.UTC(2026, 10, 26, 12, (minutes += 10)));
let address = 0;
const from = () => new Headers({ host: "127.0.0.1", "x-forwarded-for": `10.1.0.${(address += 1)}` });
const tryIn = async (number: string, now: Date, passphrase = PASSPHRASE) => {
  const done = await signIn(
    fresh().db,
    { signInName: "vesna", passphrase, number },
    from(),
    now.getTime(),
    null,
  );
  return done.ok ? "in" : done.issues[0]!.code;
};

/** Switches it on; the secret as the phone read it, and the recovery codes. */
async function switchOn(now = later()): Promise<{ secret: string; codes: readonly string[] }> {
  expect((await beginSecondFactor(fresh().db, userId)).ok).toBe(true);
  const { toRead } = await secondFactorState(fresh().db, userId, "Vesna");
  const secret = Buffer.from(base32.decode(toRead!.key)).toString();
  const typed = await numberAt(secret, stepAt(now.getTime()));
  const codes = await confirmSecondFactor(fresh().db, userId, typed, now);
  if (!codes.ok) throw new Error(codes.issues[0]!.code);
  return { secret, codes: codes.value };
}

describe("the numbers of a phone", () => {
  it("are those RFC 6238 publishes", async () => {
    for (const [seconds, number] of PUBLISHED)
      expect(await numberAt("12345678901234567890", stepAt(seconds * 1000))).toBe(number);
  });

  it("may be a half minute early or late, no more, and none is taken twice or after a later one", async () => {
    const nowMs = Date.UTC(2026, 10, 26, 9);
    const now = stepAt(nowMs);
    for (const by of [-3, -2, -1, 0, 1, 2, 3]) {
      const typed = await numberAt("secret", now + by);
      expect(await stepTyped("secret", typed, { nowMs, after: 0 }), String(by)).toBe(
        Math.abs(by) <= 1 ? now + by : null,
      );
      expect(await stepTyped("secret", typed, { nowMs, after: now + by })).toBeNull();
    }
    const before = await numberAt("secret", now - 1);
    expect(await stepTyped("secret", before, { nowMs, after: now })).toBeNull();
  });
});

describe("a second factor", () => {
  beforeEach(async () => {
    await fresh().db.secondFactor.deleteMany();
  });

  it("is asked for once it was confirmed, after the passphrase, and lets in with both alone", async () => {
    expect(await tryIn("", later())).toBe("in");
    const { secret } = await switchOn();
    const now = later();
    const number = await numberAt(secret, stepAt(now.getTime()));
    expect(await tryIn("", now)).toBe("second-factor-wanted");
    // Whoever has not the passphrase learns nothing of it.
    expect(await tryIn("", now, "wrong copper kettles")).toBe("sign-in-refused");
    expect(await tryIn(number, now, "wrong copper kettles")).toBe("sign-in-refused");
    expect(await tryIn("000000", now)).toBe("second-factor-wrong");
    expect(await tryIn(number, now)).toBe("in");
    // Seen over a shoulder, it is good for nothing any more.
    expect(await tryIn(number, now)).toBe("second-factor-wrong");
  });

  it("begun and never confirmed keeps nobody out", async () => {
    await beginSecondFactor(fresh().db, userId);
    expect(await confirmSecondFactor(fresh().db, userId, "000000", later())).toMatchObject({ ok: false });
    expect(await hasSecondFactor(fresh().db, userId)).toBe(false);
    expect(await tryIn("", later())).toBe("in");
  });

  it("has recovery codes that work once each, however they are typed, and lie here as digests", async () => {
    const { codes } = await switchOn();
    expect(codes).toHaveLength(10);
    expect(new Set(codes).size).toBe(10);
    expect(await tryIn(codes[0]!.toUpperCase().replaceAll("-", " "), later())).toBe("in");
    expect(await tryIn(codes[0]!, later())).toBe("second-factor-wrong");
    expect((await secondFactorState(fresh().db, userId, "V")).recoveryLeft).toBe(9);
    const row = JSON.stringify(await fresh().db.secondFactor.findUnique({ where: { userId } }));
    for (const code of codes) expect(row).not.toContain(code.replaceAll("-", ""));
  });

  it("takes a number shown by two at once from one of them", async () => {
    const { secret, codes } = await switchOn();
    const now = later();
    const number = await numberAt(secret, stepAt(now.getTime()));
    const twice = (typed: string) =>
      Promise.all([1, 2, 3].map(() => showsSecondFactor(fresh().db, userId, typed, now)));
    expect((await twice(number)).filter(Boolean)).toHaveLength(1);
    expect((await twice(codes[3]!)).filter(Boolean)).toHaveLength(1);
  });

  it("is guessed as often as a passphrase, and no more", async () => {
    await switchOn();
    const now = later().getTime();
    const headers = new Headers({ host: "127.0.0.1", "x-forwarded-for": "10.9.9.9" });
    const said: string[] = [];
    for (let i = 0; i < 10; i += 1) {
      const account = { signInName: "vesna", passphrase: PASSPHRASE, number: String(100_000 + i) };
      const done = await signIn(fresh().db, account, headers, now + i, null);
      said.push(done.ok ? "in" : done.issues[0]!.code);
    }
    expect(said.filter((one) => one === "second-factor-wrong")).toHaveLength(6);
    expect(said.slice(6)).toEqual(Array(4).fill("too-many-tries"));
  });

  it("is taken off by the owner when the phone is lost, and the log says so", async () => {
    await switchOn();
    expect((await takeOffSecondFactor(fresh().pen, personId)).ok).toBe(true);
    expect(await tryIn("", later())).toBe("in");
    const last = await fresh().db.logEntry.findFirst({ orderBy: { seq: "desc" } });
    expect(last?.action).toBe("passphrase.second-factor-taken-off");
    expect(await takeOffSecondFactor(fresh().pen, personId)).toMatchObject({ ok: false });
  });
});
