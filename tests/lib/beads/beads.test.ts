import { beforeAll, describe, expect, it } from "vitest";
import { emptyBeadContent, type BeadContent } from "@/lib/assess";
import type { Db } from "@/lib/db";
import { emptyDrawing, type Mark } from "@/lib/marks";
import { addPhoto, createBead, getBead, removePhoto, saveBead, type BeadRecord } from "@/lib/beads";
import type { Pen } from "@/lib/store";
import { deleteBead } from "@/lib/beads/deleted-beads";
import { useFreshDb } from "../../setup/fresh-db";
import { listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();
let db: Db;
let pen: Pen;
beforeAll(() => {
  ({ db, pen } = fresh());
});

async function newBead(): Promise<BeadRecord> {
  const made = await createBead(pen);
  if (!made.ok) throw new Error("no bead");
  return made.value;
}

const photo = (sha: string) => ({
  sha256: sha.repeat(64).slice(0, 64),
  format: "jpeg",
  bytes: 1234,
  widthPx: 800,
  heightPx: 600,
});
const pore: Mark = {
  id: "m1",
  imperfection: "surface-porosity",
  shape: { kind: "point", at: { x: 320.5, y: 241.25 }, radius: 7.5 },
  place: "face",
  stretch: "run",
  patterns: ["single"],
  gauge: [],
  note: "",
};

describe("beads", () => {
  it("get running numbers, and are listed newest first", async () => {
    const first = await newBead();
    const second = await newBead();
    expect(second.number).toBe(first.number + 1);
    const [newest] = await listBeads(db);
    expect(newest?.id).toBe(second.id);
  });

  it("come back exactly as saved: set-up, marks in fractions of a pixel, readings", async () => {
    const bead = await newBead();
    const added = await addPhoto(pen, bead.id, photo("a"), "face");
    if (!added.ok) throw new Error("photo not added");
    const content: BeadContent = {
      ...emptyBeadContent,
      title: "T-joint, second try",
      welder: "R. Oduya",
      setup: { ...emptyBeadContent.setup, process: "FCAW-S", volts: 16.5, wireFeedMPerMin: 6.223 },
      judgement: {
        ...emptyBeadContent.judgement,
        lookedFor: ["crater-crack"],
        answers: { polarity: "reversed" },
      },
      photos: [
        {
          id: added.value.record.id,
          role: "face",
          drawing: { schemaVersion: 1, scale: null, weldLine: null, marks: [pore] },
        },
      ],
    };
    const saved = await saveBead(pen, bead.id, bead.revision, content);
    const entry = await db.logEntry.findFirst({ orderBy: { seq: "desc" } });
    expect(entry).toMatchObject({ subject: `bead:${bead.id}`, action: "bead.saved", by: "test" });
    // What a save changed stands in the log by name of the part, never by what somebody wrote.
    expect(JSON.parse(entry?.detail ?? "{}")).toEqual({
      revision: 2,
      changed: [
        "judgement.answers",
        "judgement.lookedFor",
        `photo:${added.value.record.id}`,
        "setup",
        "title",
        "welder",
      ],
    });
    expect(saved).toEqual({ ok: true, value: { revision: bead.revision + 1 } });
    expect((await getBead(db, bead.id))?.content).toEqual(content);
  });

  it("refuse a save based on an older revision, and keep what is there", async () => {
    const bead = await newBead();
    expect((await saveBead(pen, bead.id, 1, { ...emptyBeadContent, title: "First window" })).ok).toBe(true);
    const late = await saveBead(pen, bead.id, 1, { ...emptyBeadContent, title: "Second window" });
    expect(late).toMatchObject({
      ok: false,
      issues: [{ code: "bead-changed-elsewhere", data: { revision: 2 } }],
    });
    expect((await getBead(db, bead.id))?.content.title).toBe("First window");
  });

  it("let only one of many saves racing from one revision win", async () => {
    const bead = await newBead();
    const answers = await Promise.all(
      Array.from({ length: 8 }, (_, k) =>
        saveBead(pen, bead.id, 1, { ...emptyBeadContent, title: `Window ${k}` }),
      ),
    );
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
    expect((await getBead(db, bead.id))?.revision).toBe(2);
  });

  it("are not half-saved when the content is not understood", async () => {
    const bead = await newBead();
    const broken = {
      ...emptyBeadContent,
      title: "New title",
      setup: { ...emptyBeadContent.setup, volts: -3 },
    };
    const answer = await saveBead(pen, bead.id, 1, broken);
    expect(answer).toMatchObject({
      ok: false,
      issues: [{ code: "bead-not-understood", path: ["setup", "volts"] }],
    });
    expect((await getBead(db, bead.id))?.content.title).toBe(bead.content.title);
  });

  it("say when they are gone", async () => {
    const bead = await newBead();
    expect((await deleteBead(pen, bead.id, new Date())).ok).toBe(true);
    expect(await deleteBead(pen, bead.id, new Date())).toMatchObject({
      ok: false,
      issues: [{ code: "bead-gone" }],
    });
    expect(await saveBead(pen, bead.id, 1, emptyBeadContent)).toMatchObject({
      ok: false,
      issues: [{ code: "bead-gone" }],
    });
    expect(await addPhoto(pen, bead.id, photo("b"), "face")).toMatchObject({
      ok: false,
      issues: [{ code: "bead-gone" }],
    });
  });
});

describe("photos of a bead", () => {
  it("are not added twice, and say which other bead has the same one", async () => {
    const one = await newBead();
    const two = await newBead();
    expect((await addPhoto(pen, one.id, photo("c"), "face")).ok).toBe(true);
    expect(await addPhoto(pen, one.id, photo("c"), "back")).toMatchObject({
      ok: false,
      issues: [{ code: "photo-already-on-bead" }],
    });
    expect(await addPhoto(pen, two.id, photo("c"), "face")).toMatchObject({
      ok: true,
      value: { alsoOn: [one.number] },
    });
  });

  it("are kept when a save from a window that does not know them comes in", async () => {
    const bead = await newBead();
    const added = await addPhoto(pen, bead.id, photo("d"), "face");
    expect(await saveBead(pen, bead.id, bead.revision, emptyBeadContent)).toMatchObject({ ok: true });
    expect((await getBead(db, bead.id))?.photos).toHaveLength(1);
    if (!added.ok) throw new Error("photo not added");
    expect((await removePhoto(pen, bead.id, added.value.record.id)).ok).toBe(true);
    expect(await removePhoto(pen, bead.id, added.value.record.id)).toMatchObject({
      ok: false,
      issues: [{ code: "photo-gone" }],
    });
    expect((await getBead(db, bead.id))?.photos).toHaveLength(0);
  });
});

describe("what is sent again because its answer was lost", () => {
  it("is made once: a bead", async () => {
    const made = await createBead(pen, { id: "bcdfghjkmnpq", title: "Away" });
    expect(made).toMatchObject({ ok: true, value: { id: "bcdfghjkmnpq" } });
    expect(await createBead(pen, { id: "bcdfghjkmnpq" })).toMatchObject({
      ok: false,
      issues: [{ code: "bead-there-already" }],
    });
  });

  it("is put on the bead once: a photo, with the answer it had", async () => {
    const bead = await newBead();
    const first = await addPhoto(pen, bead.id, photo("e"), "back", "zyxwvtsrqpnm");
    const again = await addPhoto(pen, bead.id, photo("e"), "back", "zyxwvtsrqpnm");
    expect(first).toMatchObject({ ok: true, value: { record: { id: "zyxwvtsrqpnm", role: "back" } } });
    if (!first.ok || !again.ok) throw new Error("photo not added");
    expect(again.value.record).toEqual(first.value.record);
    const other = await newBead();
    expect(await addPhoto(pen, other.id, photo("f"), "face", "zyxwvtsrqpnm")).toMatchObject({
      ok: false,
      issues: [{ code: "photo-id-taken" }],
    });
  });

  it("is saved once: a change, and only the very same one", async () => {
    const bead = await newBead();
    const mine = { ...emptyBeadContent, title: "Mine", welder: "" };
    expect(await saveBead(pen, bead.id, 1, mine)).toMatchObject({ ok: true, value: { revision: 2 } });
    const entries = await db.logEntry.count();
    expect(await saveBead(pen, bead.id, 1, mine)).toMatchObject({ ok: true, value: { revision: 2 } });
    expect(await db.logEntry.count()).toBe(entries);
    expect(await saveBead(pen, bead.id, 1, { ...mine, title: "Other" })).toMatchObject({
      ok: false,
      issues: [{ code: "bead-changed-elsewhere" }],
    });
  });

  it("is saved without the photos that did not arrive yet", async () => {
    const bead = await newBead();
    const waiting = { id: "mnpqrstvwxyz", role: "face" as const, drawing: emptyDrawing };
    const mine = { ...emptyBeadContent, title: "Mine", photos: [waiting] };
    expect(await saveBead(pen, bead.id, 1, mine)).toMatchObject({ ok: true, value: { revision: 2 } });
    expect(await saveBead(pen, bead.id, 1, mine)).toMatchObject({ ok: true, value: { revision: 2 } });
  });
});
