import { describe, expect, it } from "vitest";
import { emptyBeadContent } from "@/lib/assess";
import { createBead, getBead, saveBead } from "@/lib/beads";
import { recordSentence, type RecordIssue } from "@/lib/store";
import { recordSentences } from "@/lib/store/sentences";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();

describe("a full disk", () => {
  it("is said in a sentence, and leaves what was saved as it was", async () => {
    const { db, pen } = fresh();
    const made = await createBead(pen, { title: "Saved before" });
    if (!made.ok) throw new Error("no bead");
    // SQLite's own limit on the file's pages answers exactly as a full disk does: SQLITE_FULL.
    const [pages] = await db.$queryRawUnsafe<{ page_count: bigint }[]>("PRAGMA page_count");
    await db.$queryRawUnsafe(`PRAGMA max_page_count = ${Number(pages?.page_count)}`);
    const long = {
      ...emptyBeadContent,
      title: "Saved after",
      judgement: { ...emptyBeadContent.judgement, note: "x".repeat(4000) },
    };
    const crowd = {
      ...long,
      judgement: {
        ...long.judgement,
        answers: Object.fromEntries(
          Array.from({ length: 200 }, (_, k) => [`question-${k}-${"y".repeat(40)}`, "z".repeat(60)]),
        ),
      },
    };
    const saved = await saveBead(pen, made.value.id, 1, crowd);
    expect(saved).toMatchObject({ ok: false, issues: [{ code: "store-full" }] });
    const kept = await getBead(db, made.value.id);
    expect(kept?.content.title).toBe("Saved before");
    expect(kept?.revision).toBe(1);

    await db.$queryRawUnsafe("PRAGMA max_page_count = 1000000");
    expect(await saveBead(pen, made.value.id, 1, crowd)).toMatchObject({ ok: true });
  });
});

describe("the sentences of refusals", () => {
  it("say something for every code, without a gap left in", () => {
    for (const code of Object.keys(recordSentences) as RecordIssue["code"][]) {
      const sentence = recordSentence({ code, path: [], data: {} });
      expect(sentence).toMatch(/^[A-Z].{20,}\.$/s);
      expect(sentence).not.toContain("undefined");
    }
  });
});
