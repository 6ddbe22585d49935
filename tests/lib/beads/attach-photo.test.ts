import { createReadStream, existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { beforeEach, describe, expect, it } from "vitest";
import { fail, issue, ok } from "@/lib/base";
import { originalPath } from "@/lib/photo/paths";
import { addPhoto, attachPhoto, createBead, getBead } from "@/lib/beads";
import { verifyRecords } from "@/lib/verify";
import { newId } from "@/lib/store/new-id";
import type { NewPhoto } from "@/lib/beads/beads";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const picture = fileURLToPath(new URL("../../../demo-images/set/lap-cold-lap.jpg", import.meta.url));
const arriving = () => ({ dataDir: fresh().folder, source: createReadStream(picture), declaredBytes: null });
const kept = () =>
  ["originals", "views", "incoming"].map((name) => {
    const folder = path.join(fresh().folder, "photos", name);
    return existsSync(folder) ? readdirSync(folder).length : 0;
  });

let beadId = "";
beforeEach(async () => {
  const made = await createBead(fresh().pen, { title: "Lap" });
  beadId = made.ok ? made.value.id : "";
});
const onBead = (photo: NewPhoto) => addPhoto(fresh().pen, beadId, photo, "face");

describe("a photo that arrives", () => {
  it("leaves the store again when the record refuses it", async () => {
    const { db } = fresh();
    const refused = await attachPhoto(db, arriving(), () => Promise.resolve(fail(issue("bead-gone"))));
    expect(refused).toMatchObject({ ok: false, from: "record", issues: [{ code: "bead-gone" }] });
    expect(kept()).toEqual([0, 0, 0]);
  });

  it("leaves the store again when the database fails under it", async () => {
    const { db } = fresh();
    const broken = attachPhoto(db, arriving(), (photo) =>
      // A key that points nowhere: SQLite itself says no.
      db.photo
        .create({
          data: { id: newId(), beadId: "nowhere", role: "face", place: 0, drawing: {}, ...row(photo) },
        })
        .then(() => ok(null)),
    );
    await expect(broken).rejects.toThrow();
    expect(kept()).toEqual([0, 0, 0]);
  });

  it("stays for another that put the same picture on a bead meanwhile", async () => {
    const { db } = fresh();
    const [lost, taken] = await Promise.all([
      attachPhoto(db, arriving(), async () => {
        await new Promise((resolve) => setTimeout(resolve, 60));
        return fail(issue("bead-gone"));
      }),
      attachPhoto(db, arriving(), async (photo) => {
        await new Promise((resolve) => setTimeout(resolve, 200));
        return onBead(photo);
      }),
    ]);
    expect(lost.ok).toBe(false);
    expect(taken.ok).toBe(true);
    const sha256 = (await getBead(db, beadId))?.photos[0]?.sha256 ?? "";
    expect(existsSync(originalPath(fresh().folder, sha256) ?? "")).toBe(true);
    expect((await verifyRecords(db, fresh().folder)).findings).toEqual([]);
  });

  it("stays where a bead carries it, whoever is refused afterwards", async () => {
    const { db } = fresh();
    const before = kept();
    const refused = await attachPhoto(db, arriving(), () => Promise.resolve(fail(issue("bead-gone"))));
    expect(refused.ok).toBe(false);
    expect(kept()).toEqual(before);
  });
});

const row = ({ views: _views, ...photo }: NewPhoto): Omit<NewPhoto, "views"> => photo;
