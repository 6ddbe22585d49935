import { describe, expect, it } from "vitest";
import { askedAbout } from "@/components/bead/asked";
import type { Found } from "@/components/bead/found";
import type { EditAction, PhotoPoint, Toes } from "@/lib/marks";

const line: readonly PhotoPoint[] = [
  { x: 10, y: 50 },
  { x: 90, y: 52 },
];
const rim: readonly PhotoPoint[] = [...line, { x: 40, y: 80 }];
const nothing: Found = {
  photoId: "p",
  busy: false,
  scale: null,
  rim: null,
  words: null,
  line: null,
  said: null,
};
const toes = { upper: [], lower: [] } as unknown as Toes;

function asking(found: Found | null, proposed: Toes | null) {
  const did: (EditAction | string)[] = [];
  const asked = askedAbout(found, proposed, {
    onAction: (action) => did.push(action),
    onFound: (now) => did.push(now === null ? "found dropped" : `line from ${now.line?.[0]?.x}`),
    onRim: (points) => did.push(`rim of ${points.length}`),
    onProposed: () => did.push("toes dropped"),
  });
  return { asked, did };
}

describe("what is asked on the photo", () => {
  it("is nothing where nothing was found, and nothing before something is", () => {
    expect(asking(null, null).asked).toBeNull();
    expect(asking({ ...nothing, busy: true }, null).asked).toBeNull();
    expect(asking({ ...nothing, said: "Too small." }, null).asked).toBeNull();
  });

  it("comes one thing at a time: the toes after what was found", () => {
    expect(asking({ ...nothing, line }, toes).asked?.answers[0]?.label).toBe("Accept the weld line");
    expect(asking(nothing, toes).asked?.answers[0]?.label).toBe("Accept these toes");
    expect(asking(null, toes).asked?.answers[0]?.label).toBe("Accept these toes");
  });

  it("cannot be accepted while the search goes on", () => {
    const [main] = asking({ ...nothing, line, busy: true }, null).asked!.answers;
    expect([main?.isMain, main?.isOff]).toEqual([true, true]);
  });

  it("does what each answer says, once", () => {
    const { asked, did } = asking({ ...nothing, rim, line }, null);
    const [accept, swap, drop] = asked!.answers;
    accept!.onPress();
    expect(did).toEqual([{ type: "weldLine.set", points: line }, "rim of 3", "found dropped"]);
    swap!.onPress();
    expect(did.at(-1)).toBe("line from 90");
    drop!.onPress();
    expect(did.at(-1)).toBe("found dropped");
    const second = asking(null, toes);
    second.asked!.answers[0]!.onPress();
    expect(second.did).toEqual([{ type: "toes.set", toes }, "toes dropped"]);
  });
});
