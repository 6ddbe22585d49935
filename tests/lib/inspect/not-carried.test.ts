import { describe, expect, it } from "vitest";
import { ShopCriteriaSchema, shopRowsFrom, shopSetId } from "@/lib/accept";
import { assess, defaultAssessContext } from "@/lib/assess";
import { beadRows, SignedRecordSchema } from "@/lib/inspect";
import { signBead } from "@/lib/inspect/sign-bead";
import { recordOf, soundBead } from "./build";

const bead = soundBead();
function signedBy(keepsNames: boolean) {
  const copy = shopRowsFrom("iso-5817-c", { kind: "fillet", thicknessMm: 10 })!;
  const shop = ShopCriteriaSchema.parse({
    ...{ id: "shop-copy", title: "Copy of C", version: 1, author: "Instructor", rows: copy.rows },
    ...(keepsNames ? { notCarried: copy.notCarried } : {}),
  });
  const judgement = { ...bead.content.judgement, criteriaId: shopSetId(shop), criteriaSettings: {} };
  const content = { ...bead.content, judgement };
  const assessment = assess(content, bead.photos, { ...defaultAssessContext, shopSets: [shop] });
  return signBead({ ...bead, content, assessment });
}

describe("a signed bead judged by a copy of a code", () => {
  it("says in the record which clauses nobody looked at, the throat among them", () => {
    const signed = signedBy(true);
    expect(signed.verdict?.notCarried).toMatch(/^Not looked at here: .*1\.20 Insufficient throat/);
    expect(beadRows(signed).find(({ label }) => label === "Not carried over")?.value).toBe(
      signed.verdict?.notCarried,
    );
  });

  it("has no such key where the set kept no names, and a record without it reads back as it was", () => {
    expect(signedBy(false).verdict).not.toHaveProperty("notCarried");
    const record = recordOf({ beads: [soundBead()] });
    expect(record.beads[0]!.verdict).not.toHaveProperty("notCarried");
    expect(SignedRecordSchema.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
  });
});
