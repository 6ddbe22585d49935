import { describe, expect, it } from "vitest";
import { emptyBeadContent, emptyBeadJudgement } from "@/lib/assess";
import { createBead, getBead, saveBead } from "@/lib/beads";
import { resetShopCounts, shopCounts } from "@/lib/shop";
import {} from "@/lib/beads/beads";
import { deleteBead } from "@/lib/beads/deleted-beads";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();

describe("the next bead", () => {
  it("points back, and a cure on it counts for the shop until the counting starts afresh", async () => {
    const { db, pen } = fresh();
    const first = await createBead(pen, { title: "Ropey" });
    if (!first.ok) throw new Error("no bead");
    const judgement = {
      ...emptyBeadJudgement,
      tried: { causeId: "ctwd-long", sentence: "Shorten the stick-out.", step: "" },
    };
    const next = await createBead(pen, { title: "Ropey, try 2", previousId: first.value.id, judgement });
    if (!next.ok) throw new Error("no bead");
    expect(next.value.previous).toEqual({ id: first.value.id, number: first.value.number, title: "Ropey" });
    expect(await shopCounts(db)).toEqual({});

    const cured = { ...emptyBeadContent, judgement: { ...judgement, outcome: "cured" as const } };
    expect((await saveBead(pen, next.value.id, 1, cured)).ok).toBe(true);
    expect(await shopCounts(db)).toEqual({ "ctwd-long": 1 });

    await resetShopCounts(pen, new Date(Date.now() + 1000));
    expect(await shopCounts(db)).toEqual({});
    expect((await getBead(db, next.value.id))?.content.judgement.outcome).toBe("cured");
  });

  it("stays when the bead before it is deleted", async () => {
    const { db, pen } = fresh();
    const first = await createBead(pen, {});
    if (!first.ok) throw new Error("no bead");
    const next = await createBead(pen, { previousId: first.value.id });
    if (!next.ok) throw new Error("no bead");
    await deleteBead(pen, first.value.id, new Date());
    expect((await getBead(db, next.value.id))?.previous).toBeNull();
  });
});
