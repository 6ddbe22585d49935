import fc from "fast-check";

/** Texts made mostly of what matters here. */
export const arbHostile: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: fc.constantFrom(..."=+-@'\"\t\r\n,; a1＝＠"), maxLength: 12 }),
  fc.string({ unit: "binary", maxLength: 20 }),
);
