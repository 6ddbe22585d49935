import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { roomIn, roomLeft } from "@/lib/photo/room-left";

it("says that little is left before the largest photos no longer fit", () => {
  expect([0, 1, 199 * 1024 ** 2, 200 * 1024 ** 2, 1e12].map(roomIn)).toEqual([
    ...["none", "little", "little", "enough", "enough"],
  ]);
});

it("asks the folder itself, and takes one that is gone for one that takes nothing", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-room-"));
  expect(["enough", "little"]).toContain(await roomLeft(folder));
  rmSync(folder, { recursive: true });
  expect(await roomLeft(folder)).toBe("none");
});
