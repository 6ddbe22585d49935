import { describe, expect, it } from "vitest";
import { z } from "zod";
import { BeadContentSchema } from "@/lib/assess";
import { ArchiveManifestSchema } from "@/lib/exchange/archive-manifest";

type Node = Readonly<Record<string, unknown>>;

/** Every place of a schema at which a stranger may send as much, or as large a number, as they like. */
function unbounded(schema: z.ZodType): readonly string[] {
  const root = z.toJSONSchema(schema, { io: "input", unrepresentable: "any", reused: "inline" }) as Node;
  const open: string[] = [];
  const walk = (node: Node, path: string): void => {
    for (const key of ["anyOf", "oneOf", "allOf"])
      for (const one of (node[key] ?? []) as Node[]) walk(one, path);
    if ("const" in node || "enum" in node) return;
    if (node["type"] === "string" && !("maxLength" in node || "pattern" in node)) open.push(`${path}: text`);
    if (node["type"] === "number" || node["type"] === "integer") {
      const lowest = node["minimum"] ?? node["exclusiveMinimum"];
      const highest = node["maximum"] ?? node["exclusiveMaximum"];
      const safe = Number.MAX_SAFE_INTEGER;
      if (lowest === undefined || lowest === -safe) open.push(`${path}: number without a least`);
      if (highest === undefined || highest === safe) open.push(`${path}: number without a most`);
    }
    if (node["type"] === "array") {
      if (!("maxItems" in node) && !("prefixItems" in node)) open.push(`${path}: list`);
      for (const one of (node["prefixItems"] ?? []) as Node[]) walk(one, `${path}[]`);
      if (node["items"]) walk(node["items"] as Node, `${path}[]`);
    }
    for (const [name, one] of Object.entries((node["properties"] ?? {}) as Record<string, Node>))
      walk(one, `${path}.${name}`);
    const rest = node["additionalProperties"];
    if (typeof rest === "object" && rest !== null) {
      walk(rest as Node, `${path}{}`);
      walk((node["propertyNames"] ?? { type: "string" }) as Node, `${path}{name}`);
    }
  };
  walk(root, "");
  return [...new Set(open)];
}

describe("what comes in from outside is bounded in every field", () => {
  it("an archive", () => expect(unbounded(ArchiveManifestSchema)).toEqual([]));
  it("a bead as it is saved", () => expect(unbounded(BeadContentSchema)).toEqual([]));
});
