import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("..", import.meta.url));

function filesNamed(folder: string, name: RegExp): string[] {
  return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const inside = path.join(folder, entry.name);
    if (entry.isDirectory()) return filesNamed(inside, name);
    return name.test(entry.name) ? [inside] : [];
  });
}

/** What may be opened without asking who somebody is, with the reason. Nothing else may. */
const open: Readonly<Record<string, string>> = {
  "app/api/health/route.ts": "says only that the server answers",
  "app/sign-in/actions.ts": "whoever signs in is nobody yet",
};

/** The functions of app/_door that ask who somebody is and what they may do. */
const asks = /\b(pageFor|beadPageFor|actionFor|beadActionFor|routeFor|beadRouteFor|machineDoor|here)\(/;
/** Rooms of their own with a secret address: the secret is what is asked for. */
const asksSecret = /\b(handInBySecret|handInFor|exerciseByCode|openExercise|studentDoor)\w*\(/;

describe("every page, action and route", () => {
  const doors = filesNamed("app", /^(page\.tsx|route\.ts|actions\.ts)$/);

  it("is found", () => {
    expect(doors.length).toBeGreaterThan(12);
  });

  it.each(doors)("%s asks who is there", (file) => {
    if (open[file]) return;
    const text = readFileSync(path.join(root, file), "utf8");
    expect(asks.test(text) || asksSecret.test(text), file).toBe(true);
  });

  it.each(filesNamed("app", /^actions\.ts$/).filter((file) => !open[file]))(
    "%s asks in each of its actions",
    (file) => {
      const text = readFileSync(path.join(root, file), "utf8");
      const actions = text.split(/\nexport async function /).slice(1);
      const silent = actions
        .filter((one) => !asks.test(one) && !asksSecret.test(one))
        .map((one) => one.split("(")[0]);
      expect(silent).toEqual([]);
    },
  );

  it("would notice one that does not", () => {
    expect(asks.test("export default function Page() { return listBeads(db()); }")).toBe(false);
    expect(asks.test('const now = await pageFor("bead.read");')).toBe(true);
  });
});
