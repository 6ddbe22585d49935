import { describe, expect, it } from "vitest";
import { der, objectId, octets, readDer, sequence, setOf, smallInteger } from "@/lib/keys/der";

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");

describe("DER", () => {
  // ITU-T X.690 (from memory): 8.1.3.5 has the length 201, 8.19.5 the object identifier {2 999 3}; RFC 8017 has {1 2 840 113549}.
  it("writes lengths and object identifiers as the standard's examples have them", () => {
    expect(hex(octets(new Uint8Array(201))).slice(0, 6)).toBe("0481c9");
    expect(hex(objectId("2.999.3"))).toBe("0603883703");
    expect(hex(objectId("1.2.840.113549"))).toBe("06062a864886f70d");
  });

  it("puts a set in the order of its bytes, whatever order it came in", () => {
    const [one, two, three] = [smallInteger(1), smallInteger(2), octets(Buffer.from("a"))];
    expect(hex(setOf(three, two, one))).toBe(hex(setOf(one, two, three)));
    expect(hex(sequence(three, one))).not.toBe(hex(sequence(one, three)));
  });

  it.each([0, 1, 127, 128, 255, 256, 65_535, 65_536])(
    "reads back %i bytes as they were written",
    (length) => {
      const inner = Buffer.alloc(length, 7);
      const [first, second] = readDer(Buffer.concat([der(0x30, inner), smallInteger(5)]));
      expect(first?.tag).toBe(0x30);
      expect(Buffer.compare(first?.inner ?? Buffer.alloc(0), inner)).toBe(0);
      expect(hex(second?.all ?? Buffer.alloc(0))).toBe("020105");
    },
  );

  it("refuses what is cut short", () => {
    expect(() => readDer(Buffer.from("300501", "hex"))).toThrow(RangeError);
    expect(() => readDer(Buffer.from("30", "hex"))).toThrow(RangeError);
  });
});
