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
  "app/icons/[name]/route.ts": "the house's sign, the same for everybody",
  "app/offline/route.ts": "says what does not work without network, the same to everybody",
  "app/sw.js/route.ts": "the worker's code, the same for everybody",
  "app/sign-in/actions.ts": "whoever signs in is nobody yet",
  "app/check/page.tsx": "shows nothing but what somebody's own file holds",
  "app/api/check/route.ts":
    "verifies the file that is sent; reads nothing of this installation, keeps nothing",
  "app/passphrase/page.tsx": "whoever has a one-time code is nobody yet; the page shows nothing",
  "app/passphrase/actions.ts": "the one-time code is what is asked for",
};

/** The functions of app/_door that ask who somebody is and what they may do. */
const asks = /\b(pageFor|beadPageFor|here)\(/;
/** What every route handler is made by, but for the rooms with a secret address. */
const routeAsks =
  /^ (\w+|\{[\w, ]+\}) = (routeFor|pathRouteFor|beadRouteFor|handInRouteFor|thingRouteFor|machineDoor)(<.*>)?\(/;
/** What every server action is made by: these ask before the work begins (tests/app/action-for.test.ts) … */
const asksFirst = /^ = (actionFor|actionOn|beadActionFor|handInActionFor|personActionFor)\(/;
/** … and here the work asks. */
const leavesIt = /^ = openAction\(/;
/** Rooms of their own with a secret address: the secret is what is asked for. */
const asksSecret =
  /\b(handInBySecret|takingExercise|exerciseAsked|handInFor|exerciseByCode|openExercise|studentDoor)\w*\(/;

interface Action {
  readonly name: string;
  readonly rest: string;
}

/** Everything an actions file exports but types, each up to the next. */
const actionsOf = (text: string): Action[] =>
  text
    .split(/\nexport (?!type |interface )/)
    .slice(1)
    .map((one) => {
      const [, name = one, rest = ""] = /^const (\w+)([^]*)$/.exec(one) ?? [];
      return { name, rest };
    });

const isGuarded = ({ rest }: Action): boolean =>
  asksFirst.test(rest) || (leavesIt.test(rest) && (asks.test(rest) || asksSecret.test(rest)));

/** Handlers that neither a wrapper made nor a secret opens. */
const silentHandlers = (text: string): string[] =>
  text
    .split(/\nexport (?:const|(?:async )?function)(?! dynamic\b)/)
    .slice(1)
    .filter((one) => !routeAsks.test(one) && !asksSecret.test(one));

describe("every page, action and route", () => {
  const doors = filesNamed("app", /^(page\.tsx|route\.ts|actions\.ts)$/);

  it("is found", () => {
    expect(doors.length).toBeGreaterThan(12);
  });

  it.each(filesNamed("app", /^page\.tsx$/))("%s asks who is there", (file) => {
    if (open[file]) return;
    const text = readFileSync(path.join(root, file), "utf8");
    expect(asks.test(text) || asksSecret.test(text), file).toBe(true);
  });

  it.each(filesNamed("app", /^route\.ts$/).filter((file) => !open[file]))(
    "%s asks in each of its handlers",
    (file) => expect(silentHandlers(readFileSync(path.join(root, file), "utf8"))).toEqual([]),
  );

  it("would notice a handler that does not", () => {
    const silent = (text: string) => silentHandlers(`import x from "y";\n${text}`).length;
    expect(silent('export const GET = routeFor("bead.read", () => Response.json(1));')).toBe(0);
    expect(silent('export const { GET, POST } = machineDoor("judge");')).toBe(0);
    expect(
      silent("export async function GET() {\n  await here();\n  return handInBySecret(db, secret);\n}"),
    ).toBe(0);
    expect(silent("export async function GET() {\n  return listBeads(db());\n}")).toBe(1);
    expect(silent("export async function GET() {\n  return listBeads((await here()).db);\n}")).toBe(1);
    expect(silent('export const GET = routeFor("bead.read", f);\nexport const PUT = async () => f();')).toBe(
      1,
    );
  });

  it.each(filesNamed("app", /^actions\.ts$/).filter((file) => !open[file]))(
    "%s asks in each of its actions",
    (file) => {
      const actions = actionsOf(readFileSync(path.join(root, file), "utf8"));
      expect(actions.length).toBeGreaterThan(0);
      expect(actions.filter((one) => !isGuarded(one)).map(({ name }) => name)).toEqual([]);
    },
  );

  it("would notice an action that does not", () => {
    const guarded = (text: string) => actionsOf(`"use server";\n${text}`).map(isGuarded);
    expect(guarded('export const save = actionFor("job.write", [id], async () => {});')).toEqual([true]);
    expect(guarded("export const choose = openAction([id], async () => { await here(); });")).toEqual([true]);
    expect(guarded("export const save = openAction([id], async () => { await saveJob(pen); });")).toEqual([
      false,
    ]);
    expect(guarded("export async function save() {\n  await here();\n}")).toEqual([false]);
    expect(guarded("export const save = async () => { await here(); };")).toEqual([false]);
    expect(guarded("export { save } from './elsewhere';")).toEqual([false]);
  });

  it("would notice a page that does not", () => {
    expect(asks.test("export default function Page() { return listBeads(db()); }")).toBe(false);
    expect(asks.test('const now = await pageFor("bead.read");')).toBe(true);
  });
});
