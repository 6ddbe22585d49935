import { beforeAll, expect, it, vi } from "vitest";
import { rmSync } from "node:fs";
import { printPictures } from "@/app/_door/print-pictures";
import { viewPath } from "@/lib/photo/paths";
import { useFreshDb } from "../setup/fresh-db";
import { smallBead } from "../setup/small-shop";

const fresh = useFreshDb();
const place = vi.hoisted(() => ({ folder: "" }));
vi.mock("@/lib/db", async (original) => ({
  ...(await original<object>()),
  photoPlace: () => place.folder,
}));
beforeAll(() => (place.folder = fresh().folder));

it("a picture that is gone is left out of what is printed, and the others are there", async () => {
  const { pen, folder } = fresh();
  const [there, gone] = [await smallBead(pen, folder, 1), await smallBead(pen, folder, 2)];
  rmSync(viewPath(folder, gone.sha256, "small")!);
  const found = await printPictures([there, gone, { sha256: "../../etc/passwd" }]);
  expect([...found.keys()]).toEqual([there.sha256]);
});
