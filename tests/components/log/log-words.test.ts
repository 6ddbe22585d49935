import { describe, expect, it } from "vitest";
import { actionText, detailPhrases, logSubject } from "@/components/log/log-words";

describe("log words", () => {
  it("says an action and opens what has a page", () => {
    expect(actionText("bead.name-removed")).toBe("Bead: name removed");
    expect(actionText("hand-in.made")).toBe("Hand-in: made");
    expect(logSubject("bead:4f6")).toEqual({ kind: "Bead", id: "4f6", href: "/beads/4f6" });
    expect(logSubject("setting:demo.filled").href).toBeNull();
    expect(logSubject("unheard:x").kind).toBe("unheard");
  });

  it("turns the detail into phrases", () => {
    const digest = "ab".repeat(32);
    expect(detailPhrases("{}")).toEqual([]);
    expect(
      detailPhrases(
        JSON.stringify({
          changed: ["judgement.lookedFor", "photo:p1", "setup"],
          revision: 2,
          sha256: digest,
        }),
      ),
    ).toEqual([
      "changed: looked for, marks or scale of photo p1, how it was run",
      "revision 2",
      "SHA-256 abababababab…",
    ]);
  });
});
