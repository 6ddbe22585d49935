import { describe, expect, it } from "vitest";
import { caseJsonSchema } from "@/lib/case";
import { doorNames } from "@/lib/case/doors";
import { unitOfName } from "@/lib/case/unit-of-name";

/** Counts, shares, versions and numbers whose unit stands beside them: they have no unit in their name. */
const bare = [
  "aboutCount",
  "version",
  "schemaVersion",
  "passCount",
  "poreCount",
  "value",
  "expandedUncertainty",
  "u",
  "odds",
  "limit",
  "ofThickness",
  "printFactor",
  "statedLengthRelativeU",
  "lensCornerRelativeU",
  "shopCounts",
  "sure",
  "k",
];

type Json = Readonly<Record<string, unknown>>;

/** The name nearest to every number in a JSON Schema. */
function numbersIn(schema: unknown, name = ""): readonly string[] {
  if (Array.isArray(schema)) return schema.flatMap((one) => numbersIn(one, name));
  if (typeof schema !== "object" || schema === null) return [];
  const { type, properties = {}, ...rest } = schema as Json & { properties?: Json };
  const own = type === "number" || type === "integer" ? [name] : [];
  const inner = Object.entries(properties).flatMap(([key, one]) => numbersIn(one, key));
  const parts = ["anyOf", "oneOf", "allOf", "items", "prefixItems", "additionalProperties"];
  return [...own, ...inner, ...parts.flatMap((part) => numbersIn(rest[part], name))];
}

describe("the unit of a number", () => {
  const names = [...new Set(doorNames.flatMap((door) => numbersIn(caseJsonSchema(door))))];

  it("is known for every number of every door but the bare ones", () => {
    expect(names.length).toBeGreaterThan(50);
    expect(names.filter((name) => unitOfName(name) === null).toSorted()).toEqual(bare.toSorted());
  });

  it("is what the name says", () => {
    expect(
      ["depthMm", "areaMm2", "travelSpeedMmPerMin", "wireFeedMPerMin", "gasFlowLPerMin", "arcTimeS"].map(
        unitOfName,
      ),
    ).toEqual(["mm", "mm2", "mm/min", "m/min", "L/min", "seconds"]);
    expect(["toeAngle", "plateAngleDeg", "x", "volts"].map(unitOfName)).toEqual([
      "degrees",
      "degrees",
      "photo pixels",
      "volts",
    ]);
    expect(["constructor", "__proto__", "", "S", "AS"].map(unitOfName)).toEqual([
      null,
      null,
      null,
      null,
      null,
    ]);
  });
});
