import { describe, expect, it } from "vitest";
import { siteAmong } from "@/lib/cli/site-flag";

describe("the flag that names a site", () => {
  it("is taken out of the words wherever it stands, and leaves the others to the command", () => {
    const taken = (...words: string[]) => [siteAmong(words), words];
    expect(taken("--site", "north", "--new")).toEqual(["north", ["--new"]]);
    expect(taken("/mnt/usb", "--site=south")).toEqual(["south", ["/mnt/usb"]]);
    expect(taken("--nightly")).toEqual([null, ["--nightly"]]);
    // Without a name it is nobody's: the command says which there are.
    expect(taken("--new", "--site")).toEqual(["", ["--new"]]);
  });
});
