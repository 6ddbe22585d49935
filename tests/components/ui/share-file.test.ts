import { describe, expect, it } from "vitest";
import { shareFile } from "@/components/ui/share-file";

const file = new File(["%PDF"], "bead-3.pdf", { type: "application/pdf" });
async function sharing(sharer: Parameters<typeof shareFile>[2]) {
  const kept: string[] = [];
  const done = await shareFile(file, "Bead 3", sharer, ({ name }) => kept.push(name));
  return [done, kept] as const;
}
const refuses = (name: string) => async () => {
  throw new DOMException("", name);
};

describe("handing a file on", () => {
  it("opens the device's share sheet with the file where there is one", async () => {
    const shared: unknown[] = [];
    const sharer = { canShare: () => true, share: async (data: object) => void shared.push(data) };
    expect(await sharing(sharer)).toEqual(["shared", []]);
    expect(shared).toEqual([{ files: [file], title: "Bead 3" }]);
  });

  it("keeps it as a download where there is none, where it takes no files, and where the press was too long ago", async () => {
    for (const sharer of [
      {},
      { canShare: () => false, share: async () => undefined },
      { canShare: () => true, share: refuses("NotAllowedError") },
    ])
      expect(await sharing(sharer)).toEqual(["kept", ["bead-3.pdf"]]);
  });

  it("does neither to whoever closed the sheet", async () => {
    expect(await sharing({ canShare: () => true, share: refuses("AbortError") })).toEqual(["closed", []]);
  });
});
