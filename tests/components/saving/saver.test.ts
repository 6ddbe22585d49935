import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCollision, Saver, type Saved } from "@/components/saving/saver";
import { ok, refused, type Answer } from "@/lib/base";
import { recordSentences } from "@/lib/store/sentences";

interface Text {
  readonly words: readonly string[];
}

/** A store that takes a save only at its own revision, and can be out of reach. */
class Store {
  revision = 1;
  content: Text = { words: [] };
  reachable = true;
  readonly kept: (readonly [number, Text])[] = [];
  readonly save = async (basedOn: number, content: Text): Promise<Answer<Saved>> => {
    await Promise.resolve();
    if (!this.reachable) throw new Error("no answer");
    if (basedOn !== this.revision) return refused("job-changed-elsewhere", "Changed elsewhere.");
    this.kept.push([basedOn, content]);
    this.content = content;
    return ok({ revision: (this.revision += 1) });
  };
}

const windowOn = (store: Store) => new Saver(store.revision, store.content, store.save, "No answer.");
const text = (...words: string[]): Text => ({ words });

describe("saving at a revision", () => {
  it("sends what changed, and what changes while it is being sent", async () => {
    const store = new Store();
    const one = windowOn(store);
    one.change(text("a"));
    const done = one.flush();
    one.change(text("a", "b"));
    expect(await done).toBe(3);
    expect(store.content).toEqual(text("a", "b"));
    expect(one.state()).toEqual({ kind: "saved", value: { revision: 3 } });
  });

  it("sends nothing where nothing changed, and answers with the revision it stands at", async () => {
    const store = new Store();
    expect(await windowOn(store).flush()).toBe(1);
    expect(store.kept).toEqual([]);
  });

  it("sends once what was asked for, not what is typed meanwhile", async () => {
    const store = new Store();
    const one = windowOn(store);
    one.change(text("a"));
    const done = one.send();
    one.change(text("a", "half a wo"));
    await done;
    expect(store.content).toEqual(text("a"));
    expect(one.state().kind).toBe("saved");
    await one.send();
    expect(store.content).toEqual(text("a", "half a wo"));
  });

  it("sends what was asked for although nothing changed", async () => {
    const store = new Store();
    expect(await windowOn(store).send()).toBe(2);
  });

  it("keeps what got no answer and sends it with the next try", async () => {
    const store = new Store();
    const one = windowOn(store);
    store.reachable = false;
    one.change(text("a"));
    expect(await one.flush()).toBeNull();
    expect(one.state()).toMatchObject({ kind: "refused", refusal: { issues: [{ message: "No answer." }] } });
    store.reachable = true;
    expect(await one.flush()).toBe(2);
    expect(store.content).toEqual(text("a"));
  });

  it("sends nothing more after a collision until the person has chosen", async () => {
    const store = new Store();
    const [one, two] = [windowOn(store), windowOn(store)];
    one.change(text("one"));
    await one.flush();
    two.change(text("two"));
    await two.flush();
    two.change(text("two", "more"));
    expect(await two.flush()).toBeNull();
    expect(two.state().kind).toBe("collided");
    expect(store.content).toEqual(text("one"));
    two.settle(store.revision, false);
    await two.flush();
    expect(store.content).toEqual(text("two", "more"));
  });

  it("does not send the stored version back when that was taken", async () => {
    const store = new Store();
    const [one, two] = [windowOn(store), windowOn(store)];
    one.change(text("one"));
    await one.flush();
    two.change(text("two"));
    await two.flush();
    two.settle(store.revision, true);
    expect(two.change(text("one"))).toBe(false);
    expect(await two.flush()).toBe(2);
    expect(store.kept).toHaveLength(1);
    two.change(text("one", "two"));
    expect(await two.flush()).toBe(3);
  });

  it("knows a collision that another request met", async () => {
    const store = new Store();
    const one = windowOn(store);
    one.collide(refused("feedback-changed-elsewhere", "Changed elsewhere."));
    one.change(text("a"));
    expect(await one.flush()).toBeNull();
    expect(store.kept).toEqual([]);
  });

  it("sends what is kept although this window had nothing new", async () => {
    const store = new Store();
    const [one, two] = [windowOn(store), windowOn(store)];
    one.change(text("one"));
    await one.flush();
    two.collide(refused("feedback-changed-elsewhere", "Changed elsewhere."));
    two.settle(store.revision, false);
    expect(await two.flush()).toBe(3);
    expect(store.content).toEqual(text());
  });
});

describe("a collision", () => {
  it("is known by its code, in every room that saves at a revision", () => {
    const codes = Object.keys(recordSentences).filter((code) => isCollision(refused(code, "")));
    expect(codes.sort()).toEqual(
      ["bead", "criteria", "exercise", "feedback", "inspection", "job", "trial"].map(
        (what) => `${what}-changed-elsewhere`,
      ),
    );
  });
});

/** Windows that write and save in any order, over a store that comes and goes. */
const step = fc.record({
  at: fc.nat({ max: 2 }),
  does: fc.constantFrom("write", "save", "ask", "keep", "take", "cut", "mend"),
});

describe("over any order of writing, saving and choosing", () => {
  it("never overwrites what a window has not seen, and never calls saved what the store does not hold", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 40 }), async (steps) => {
        const store = new Store();
        const windows = [0, 1, 2].map(() => ({ saver: windowOn(store), shown: store.content, seen: 1 }));
        let count = 0;
        for (const { at, does } of steps) {
          const one = windows[at]!;
          const { saver } = one;
          if (does === "cut" || does === "mend") store.reachable = does === "mend";
          if (does === "write") saver.change((one.shown = text(...one.shown.words, `${at}.${(count += 1)}`)));
          const collided = saver.state().kind === "collided";
          if (collided && (does === "keep" || does === "take")) {
            one.seen = store.revision;
            saver.settle(store.revision, does === "take");
            if (does === "take") saver.change((one.shown = { ...store.content }));
          }
          if (does === "write" || does === "cut" || does === "mend") continue;
          const before = store.kept.length;
          const revision = await (does === "ask" ? saver.send() : saver.flush());
          for (const [basedOn] of store.kept.slice(before)) expect(basedOn).toBe(one.seen++);
          if (revision === null) expect(saver.state().kind).toMatch(/refused|collided/);
          else if (revision === store.revision) expect(store.content).toEqual(one.shown);
        }
        store.reachable = true;
        // Whatever happened, nothing is lost: each window can still bring what it shows into the store.
        for (const { saver, shown } of windows) {
          await saver.flush();
          if (saver.state().kind === "collided") saver.settle(store.revision, false);
          expect(await saver.flush()).not.toBeNull();
          expect([text(), ...store.kept.map(([, content]) => content)]).toContainEqual(shown);
        }
      }),
      { seed: 20261126, numRuns: 300 },
    );
  });
});
