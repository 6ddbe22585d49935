import { existsSync, readdirSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { severities } from "@/demo-images/close-ups/close-up";
import { closeUps } from "@/demo-images/close-ups/close-ups";
import { imperfectionIds } from "@/lib/trade";
import { closeUpShown } from "./close-up-shown";
import { inDepth } from "../setup/in-depth";

const folder = fileURLToPath(new URL("../../public/close-ups/", import.meta.url));
const names = imperfectionIds.flatMap((id) => [...severities, "small"].map((end) => `${id}-${end}.webp`));

describe("close-ups of every imperfection", () => {
  it("are there for every kind once", () => {
    expect(closeUps.map(({ id }) => id).toSorted()).toEqual([...imperfectionIds].toSorted());
  });

  // Known from the surface as it was built, not from the option that was asked for.
  it.each(closeUps.filter((_, i) => i % inDepth(18, 1) === 0).map((one) => [one.id, one] as const))(
    "%s grows with severity, in sight",
    (_, closeUp) => {
      const [mild, plain, bad] = severities.map((severity) => closeUpShown(closeUp, severity));
      expect(mild!.size).toBeGreaterThan(0);
      expect(plain!.size).toBeGreaterThan(1.15 * mild!.size);
      expect(bad!.size).toBeGreaterThan(1.15 * plain!.size);
      expect([mild!.inSight, plain!.inSight, bad!.inSight]).toEqual([true, true, true]);
    },
  );

  it("lie in the public folder, small, each and none besides", async () => {
    expect(existsSync(folder)).toBe(true);
    expect(readdirSync(folder).toSorted()).toEqual(names.toSorted());
    const bytes = names.map((name) => statSync(folder + name).size);
    expect(Math.max(...bytes)).toBeLessThan(26_000);
    expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThan(2_000_000);
    for (const name of names) {
      const { format, width, height } = await sharp(folder + name).metadata();
      const size = name.endsWith("-small.webp") ? [208, 156] : [480, 360];
      expect([name, format, width, height]).toEqual([name, "webp", ...size]);
    }
  });
});
