import { beforeAll, describe, expect, it } from "vitest";
import { LOOK_WAITS, standInLine } from "@/app/_door/look-turns";
import { POST } from "@/app/api/log/verify/route";
import { createBead } from "@/lib/beads";
import { serveFrom, useFreshDb } from "../setup/fresh-db";

const fresh = useFreshDb();
beforeAll(async () => {
  serveFrom(fresh().folder);
  await createBead(fresh().pen, { title: "Lap" });
});

const ask = (body = ""): Promise<Response> =>
  POST(
    new Request("http://localhost:3000/api/log/verify", {
      ...{ method: "POST", headers: { host: "localhost:3000" }, body },
    }),
  );
const lines = (text: string) =>
  text
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as { readonly says: string });
/** Until whoever was let in knows. */
const settled = () => new Promise((resolve) => setTimeout(resolve, 20));

describe("the line of looks at all records", () => {
  it("lets two senders in at once, of each one, and the next when one leaves, whether or not they waited", async () => {
    const [ann, bob, cid] = [standInLine("ann")!, standInLine("bob")!, standInLine("cid")!];
    const annAgain = standInLine("ann")!;
    expect(standInLine("ann")).toBeNull();
    await settled();
    expect([ann, bob, cid, annAgain].map((one) => one.isMine())).toEqual([true, true, false, false]);
    await cid.wait(5);
    expect(cid.isMine()).toBe(false);
    // Who goes away while they wait is let in and is gone at once.
    cid.leave();
    ann.leave();
    await annAgain.wait(10_000);
    expect(annAgain.isMine()).toBe(true);
    bob.leave();
    annAgain.leave();
    await settled();
    const dora = standInLine("dora")!;
    await dora.wait(10_000);
    expect(dora.isMine()).toBe(true);
    dora.leave();
  });

  it("is where the address stands that looks: it answers in lines, and the last says that it ended", async () => {
    const answer = await ask();
    expect(answer.headers.get("content-type")).toBe("application/x-ndjson");
    const said = lines(await answer.text());
    expect(said.at(-1)).toMatchObject({ says: "ended", findings: 0 });
    expect(said.filter(({ says }) => says === "ended").length).toBe(1);
    // Its place is free again.
    expect(lines(await (await ask()).text()).at(-1)).toMatchObject({ says: "ended" });
  });

  it("gives a place back when nobody reads on, and says so where there is none", async () => {
    const first = await ask();
    const second = await ask();
    const third = await ask();
    expect(third.status).toBe(429);
    expect(await third.json()).toMatchObject({ issues: [{ message: LOOK_WAITS }] });
    const reader = second.body!.getReader();
    const { value } = await reader.read();
    expect(lines(new TextDecoder().decode(value))).toEqual([{ says: "waiting" }]);
    await first.body!.cancel();
    await reader.cancel();
    const after = lines(await (await ask()).text());
    expect(after.at(-1)).toMatchObject({ says: "ended" });
  });

  it("refuses in words what is no head of a log", async () => {
    const refused = await ask("nonsense");
    expect(refused.status).toBe(422);
    expect(JSON.stringify(await refused.json())).toMatch(/"message":"\w/);
    expect((await ask("x".repeat(9000))).status).toBe(413);
    const other = lines(await (await ask(`1:${"0".repeat(64)}`)).text());
    expect(other.at(-1)).toMatchObject({ says: "ended", findings: 1 });
  });
});
