import { describe, expect, it } from "vitest";
import {
  keptPage,
  outdated,
  pagesCache,
  PHOTOS_CACHE,
  PRIVATE_CACHES,
} from "@/components/offline/worker/cache-names";

const at = (pathname: string) => keptPage({ pathname });

describe("what this device keeps for opening without network", () => {
  it("is the list and workbenches, and no page that another page must not be shown without", () => {
    expect([at("/"), at("/beads/new"), at("/beads/bcdfghjkmnpq")]).toEqual(["list", "new", "bead"]);
    for (const page of [
      "/beads/bcdfghjkmnpq/sheet",
      "/beads/deleted",
      "/inspections/x",
      "/sign-in",
      "/people",
      "/log",
    ])
      expect(at(page), page).toBeNull();
  });

  it("goes when the next build comes or somebody signs out, by the names of its caches", () => {
    const names = [pagesCache("old"), pagesCache("new"), PHOTOS_CACHE, "serwist-precache"];
    expect(outdated(names, "new")).toEqual([pagesCache("old")]);
    expect(names.filter((name) => name.startsWith(PRIVATE_CACHES))).toHaveLength(3);
  });
});
