import { Validator } from "@seriousme/openapi-schema-validator";
import { describe, expect, it } from "vitest";
import { openApiDocument } from "@/app/api/openapi.json/document";

/** The document as a client gets it. */
const served = () => JSON.parse(JSON.stringify(openApiDocument())) as Record<string, unknown>;

describe("the description of the HTTP API", () => {
  it("keeps to the OpenAPI 3.1 schema that its makers publish", async () => {
    const validator = new Validator();
    const { valid, errors } = await validator.validate(served());
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
    expect(validator.version).toBe("3.1");
  });

  it("would not, with an answer that describes nothing", async () => {
    const broken = served();
    broken["paths"] = { "/api/beads": { get: { responses: { 200: { content: {} } } } } };
    expect((await new Validator().validate(broken)).valid).toBe(false);
  });
});
