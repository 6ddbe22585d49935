import { beforeAll, describe, expect, it } from "vitest";
import { assess, BeadContentSchema, emptyBeadContent } from "@/lib/assess";
import { carriedBy } from "@/lib/gauge";
import { addInstrument, addStudy, listStudies, studiesForReadings, withdrawStudy } from "@/lib/jobs";
import { emptyDrawing } from "@/lib/marks";
import { useFreshDb } from "../../setup/fresh-db";
import { handbook } from "../gauge/handbook";

const fresh = useFreshDb();
let gaugeId = "";
const value = <T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const codes = (result: { ok: boolean; issues?: readonly { code: string }[] }) =>
  result.ok ? [] : result.issues!.map(({ code }) => code);

beforeAll(async () => {
  gaugeId = value(await addInstrument(fresh().pen, { kind: "fillet-gauge", name: "Gauge 2" })).id;
});

describe("studies of a gauge as stored", () => {
  it("counts for readings from its day on, the newest that is not withdrawn", async () => {
    const { pen } = fresh();
    const first = value(await addStudy(pen, gaugeId, handbook)).id;
    const later = { ...handbook, on: "2026-11-24" };
    const second = value(await addStudy(pen, gaugeId, later)).id;
    const of = async (day: string) => (await studiesForReadings(pen.db, day)).get(gaugeId)?.on ?? null;
    expect([
      await of("2026-11-19"),
      await of("2026-11-20"),
      await of("2026-11-23"),
      await of("2026-11-26"),
    ]).toEqual([null, "2026-11-20", "2026-11-20", "2026-11-24"]);
    value(await withdrawStudy(pen, second, new Date("2026-11-26T08:00:00Z")));
    expect(await of("2026-11-26")).toBe("2026-11-20");
    value(await withdrawStudy(pen, second, null));
    expect(await of("2026-11-26")).toBe("2026-11-24");
    expect((await listStudies(pen.db, { instrumentId: gaugeId })).map(({ id }) => id)).toEqual([
      second,
      first,
    ]);
  });

  it("is silent where the newest is too small to speak, so that an older one that does counts", async () => {
    const { pen } = fresh();
    const other = value(await addInstrument(pen, { kind: "throat-gauge", name: "Gauge 3" })).id;
    const small = { ...handbook, parts: ["1", "2"], values: handbook.values.map((own) => own.slice(0, 2)) };
    value(await addStudy(pen, other, { ...small, on: "2026-11-25" }));
    expect((await studiesForReadings(pen.db, "2026-11-26")).has(other)).toBe(false);
    value(await addStudy(pen, other, handbook));
    expect((await studiesForReadings(pen.db, "2026-11-26")).get(other)?.on).toBe("2026-11-20");
  });

  it("refuses what does not fit its gauge, has a gap, or is of none", async () => {
    const { pen } = fresh();
    const glass = value(await addInstrument(pen, { kind: "magnifier", name: "Glass" })).id;
    expect(codes(await addStudy(pen, glass, handbook))).toEqual(["study-not-understood"]);
    expect(codes(await addStudy(pen, gaugeId, { ...handbook, unit: "deg" }))).toEqual([
      "study-not-understood",
    ]);
    expect(codes(await addStudy(pen, gaugeId, { ...handbook, values: [] }))).toEqual([
      "study-not-understood",
    ]);
    expect(codes(await addStudy(pen, "nowhere", handbook))).toEqual(["instrument-gone"]);
    expect(codes(await withdrawStudy(pen, "nowhere", null))).toEqual(["study-gone"]);
  });
});

describe("a verdict by a gauge that was studied", () => {
  /** ISO 5817:2014, item 1.7, level C: undercut up to a tenth of the plate, at most 0.5 mm; 0.4 mm was read. */
  const judged = (study: object) => {
    const mark = {
      ...{ id: "u", imperfection: "undercut", place: "upper-toe", stretch: "run", patterns: [], note: "" },
      shape: {
        kind: "line",
        points: [
          { x: 300, y: 700 },
          { x: 540, y: 700 },
        ],
      },
      gauge: [{ quantity: "depth", valueMm: 0.4, instrument: "Gauge 2", resolutionMm: 0.05, ...study }],
    };
    const content = BeadContentSchema.parse({
      ...emptyBeadContent,
      setup: { ...emptyBeadContent.setup, joint: "tee", thicknessMm: 8 },
      judgement: {
        ...emptyBeadContent.judgement,
        criteriaId: "iso-5817-c",
        criteriaSettings: { gauges: "guarded" },
      },
      photos: [{ id: "p", role: "face", drawing: { ...emptyDrawing, marks: [mark] } }],
    });
    const facts = [{ id: "p", sha256: "0".repeat(64), widthPx: 2000, heightPx: 1500 }];
    const { verdict } = assess(content, facts);
    if (!verdict?.ok) throw new Error("no verdict");
    return verdict.value.rows.find(({ value }) => value === 0.4);
  };

  it("is open where the study leaves the limit within reach, and met by the step alone", () => {
    const study = carriedBy({ on: "2026-11-20", u: 0.1, k: 2.5, unit: "mm" }, "mm");
    expect(judged({})).toMatchObject({ result: "meets", limit: { value: 0.5 } });
    expect(judged(study)).toMatchObject({ result: "open", expandedUncertainty: 0.25 });
    expect(carriedBy({ on: "2026-11-20", u: 0.3, k: 2.5, unit: "deg" }, "mm")).toEqual({});
  });
});
