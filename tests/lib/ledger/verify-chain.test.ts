import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chainWalk, compareStates, nextEntry, type LogEntry } from "@/lib/ledger";
import { CHAIN_START, entryHash, LogEntrySchema, type LogDraft } from "@/lib/ledger/entry";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

const arbDraft: fc.Arbitrary<LogDraft> = fc.record({
  at: fc.constant("2026-11-25T10:00:00.000Z"),
  by: fc.constantFrom("owner", "person:a", "hand-in:b"),
  action: fc.constantFrom("bead.saved", "record.signed"),
  subject: fc.constantFrom("bead:a", "bead:b", "job:c"),
  digest: fc.option(fc.string().map(sha256)),
  detail: fc.json(),
});

const chain = (drafts: readonly LogDraft[]): LogEntry[] =>
  drafts.reduce<LogEntry[]>((log, draft) => [...log, nextEntry(log.at(-1) ?? null, draft, sha256)], []);

/** The log walked whole; in two parts, wherever it is cut, the same is found. */
function whole(log: readonly LogEntry[]) {
  const found = chainWalk(sha256).next(log);
  for (let cut = 0; cut <= log.length; cut += 1) {
    const walk = chainWalk(sha256);
    const parted = [...walk.next(log.slice(0, cut)), ...walk.next(log.slice(cut))];
    expect(parted).toEqual(found);
    const end = log[cut - 1];
    if (!end) continue;
    const rest = chainWalk(sha256, end).next(log.slice(cut));
    expect(rest).toEqual(found.slice(found.length - rest.length));
  }
  return found;
}

const arbChain = fc.array(arbDraft, { minLength: 2, maxLength: 12 }).map(chain);

describe("the chain of the log", () => {
  it("is sound as written, and starts from nothing", () => {
    fc.assert(
      fc.property(arbChain, (log) => {
        expect(whole(log)).toEqual([]);
        expect(log[0]?.previous).toBe(CHAIN_START);
        for (const entry of log) expect(LogEntrySchema.parse(entry)).toEqual(entry);
      }),
    );
  });

  it("shows any field of any entry changed, even with that entry's hash made to fit, unless it is the last", () => {
    const fields = ["by", "action", "subject", "detail", "at"] as const;
    fc.assert(
      fc.property(
        arbChain,
        fc.nat(),
        fc.constantFrom(...fields),
        fc.boolean(),
        (log, pick, field, rehash) => {
          const at = pick % (log.length - 1);
          const entry = log[at]!;
          const forged = { ...entry, [field]: `${entry[field]}x` };
          const changed = log.with(at, rehash ? { ...forged, hash: entryHash(forged, sha256) } : forged);
          const codes = whole(changed).map(({ code }) => code);
          expect(codes).toContain(rehash ? "entry-does-not-follow" : "entry-changed");
        },
      ),
    );
  });

  it("shows an entry taken out or two swapped", () => {
    fc.assert(
      fc.property(arbChain, fc.nat(), (log, pick) => {
        const at = pick % (log.length - 1);
        expect(whole(log.toSpliced(at, 1)).length).toBeGreaterThan(0);
        const swapped = log.with(at, log[at + 1]!).with(at + 1, log[at]!);
        expect(whole(swapped).length).toBeGreaterThan(0);
      }),
    );
  });

  it("says when a clock ran back", () => {
    const late = {
      at: "2026-11-25T10:00:00.000Z",
      by: "owner",
      action: "a",
      subject: "bead:a",
      digest: null,
      detail: "{}",
    };
    const log = chain([late, { ...late, at: "2026-11-24T10:00:00.000Z" }]);
    expect(whole(log).map(({ code }) => code)).toEqual(["time-runs-back"]);
  });

  // FIPS 180-4's own example message, so that the hash is the standard's and not something of ours.
  it("uses SHA-256 of FIPS 180-4", () => {
    expect(sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  });
});

describe("comparing with what is there", () => {
  it("finds changed, missing and unlogged, and nothing else", () => {
    const log = chain(
      [
        ["bead:a", "1"],
        ["bead:b", "2"],
        ["bead:c", "3"],
        ["bead:d", null],
      ].map(([subject, text]) => ({
        at: "2026-11-25T10:00:00.000Z",
        by: "owner",
        action: "x",
        subject: String(subject),
        digest: text === null ? null : sha256(String(text)),
        detail: "{}",
      })),
    );
    const latest = new Map(log.map(({ subject, digest }) => [subject, digest]));
    const states = new Map([
      ["bead:a", sha256("1")],
      ["bead:b", sha256("changed")],
      ["bead:d", sha256("back again")],
      ["bead:e", sha256("new")],
    ]);
    expect(compareStates(latest, states).map(({ code, path }) => `${code} ${path[0]}`)).toEqual([
      "state-changed bead:b",
      "state-unlogged bead:d",
      "state-unlogged bead:e",
      "state-missing bead:c",
    ]);
  });
});
