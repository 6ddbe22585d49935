import { beforeAll, describe, expect, it } from "vitest";
import { emptyBeadJudgement, type BeadContent } from "@/lib/assess";
import type { Db } from "@/lib/db";
import { emptyDrawing } from "@/lib/marks";
import { addPhoto, createBead, getBead, saveBead } from "@/lib/beads";
import type { Pen } from "@/lib/store";
import { subjectState } from "@/lib/store/subjects";
import { meltedFillet } from "../assess/section-bead";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
let db: Db;
let pen: Pen;
beforeAll(() => {
  ({ db, pen } = fresh());
});

async function beadWithPhoto(): Promise<{ id: string; content: BeadContent }> {
  const made = await createBead(pen);
  if (!made.ok) throw new Error("no bead");
  const sha256 = made.value.id.padEnd(64, "0").slice(0, 64);
  const photo = { sha256, format: "jpeg", bytes: 1234, widthPx: 2400, heightPx: 2000 };
  await addPhoto(pen, made.value.id, photo, "section");
  return { id: made.value.id, content: (await getBead(db, made.value.id))!.content };
}

describe("a section in the store", () => {
  it("comes back as it was saved, and goes without a trace", async () => {
    const { id, content } = await beadWithPhoto();
    const before = (await subjectState(db, `bead:${id}`)) as { photos: unknown };
    const [photo] = content.photos;
    const drawn: BeadContent = {
      ...content,
      judgement: { ...content.judgement, sectionSetId: "iso-9606-1-macro-fillet" },
      photos: [{ ...photo!, section: meltedFillet }],
    };
    expect(await saveBead(pen, id, 1, drawn)).toEqual({ ok: true, value: { revision: 2 } });
    expect((await getBead(db, id))!.content).toEqual(drawn);
    expect(await saveBead(pen, id, 2, content)).toEqual({ ok: true, value: { revision: 3 } });
    const after = (await subjectState(db, `bead:${id}`)) as { photos: unknown };
    expect(after.photos).toEqual(before.photos);
  });

  it("leaves the stored row of a photo without one as it always was", async () => {
    const { id, content } = await beadWithPhoto();
    await saveBead(pen, id, 1, content);
    const row = await db.photo.findFirstOrThrow({ where: { beadId: id } });
    expect(row.drawing).toEqual(emptyDrawing);
    const bead = await db.bead.findUniqueOrThrow({ where: { id } });
    expect(bead.judgement).toEqual(emptyBeadJudgement);
  });
});
