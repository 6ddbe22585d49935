import { beforeAll, describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { readHead, signedHead } from "@/lib/keys";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
type Head = NonNullable<Awaited<ReturnType<typeof signedHead>>>;
let head: Head;
beforeAll(async () => {
  await createBead(fresh().pen, { title: "Lap" });
  head = (await signedHead(fresh().pen, new Date("2026-11-26T12:00:00.000Z")))!;
});

const issueOf = (text: string) => {
  const read = readHead(text);
  return read.ok ? null : read.issues[0]?.code;
};

describe("the head of the log, kept elsewhere", () => {
  it("is read from its file and from what was printed of it", () => {
    expect(readHead(JSON.stringify(head))).toEqual({ ok: true, value: head.head });
    const { seq, hash } = head.head;
    const spaced = `${seq}: ${hash.toUpperCase().match(/.{8}/g)!.join(" ")}\n`;
    expect(readHead(spaced)).toEqual({ ok: true, value: head.head });
  });

  it("is not believed when any of it was changed", () => {
    const other = "0".repeat(64);
    for (const forged of [
      { ...head, head: { ...head.head, hash: other } },
      { ...head, head: { ...head.head, seq: head.head.seq + 1 } },
      { ...head, key: { ...head.key, id: other } },
      { ...head, signature: { ...head.signature, at: "2026-11-26T12:00:00.001Z" } },
    ])
      expect(issueOf(JSON.stringify(forged))).toBe("head-forged");
    for (const nothing of ["", "{}", "12", `x:${other}`, `0:${other}`, `1:${other}0`])
      expect(issueOf(nothing)).toBe("head-not-understood");
  });

  it("stands however the log goes on", async () => {
    await createBead(fresh().pen, { title: "Tee" });
    const { db, folder } = fresh();
    expect((await verifyRecords(db, folder, { noted: head.head })).findings).toEqual([]);
  });
});
