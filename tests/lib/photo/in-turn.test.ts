import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inTurn } from "@/lib/photo/in-turn";

const tick = () => new Promise<void>((resolve) => setImmediate(resolve));

/** Work of these senders in this order, each piece some ticks long; what began and ended, in order. */
async function run(sent: readonly { readonly sender: string; readonly ticks: number }[]) {
  const told: { readonly sender: string; readonly what: "begin" | "end" }[] = [];
  await Promise.all(
    sent.map(({ sender, ticks }) =>
      inTurn(sender, async () => {
        told.push({ sender, what: "begin" });
        for (let i = 0; i < ticks; i += 1) await tick();
        told.push({ sender, what: "end" });
      }),
    ),
  );
  return told;
}

describe("turns at decoding", () => {
  it("let a newcomer in before a heap that was sent first", async () => {
    const heap = Array.from({ length: 40 }, () => ({ sender: "heap", ticks: 3 }));
    const told = await run([...heap, { sender: "newcomer", ticks: 1 }]);
    const before = told.slice(
      0,
      told.findIndex(({ sender }) => sender === "newcomer"),
    );
    expect(before.filter(({ what }) => what === "end").length).toBeLessThanOrEqual(1);
  });

  it("leave others a place beside one that takes very long", async () => {
    const others = Array.from({ length: 20 }, (_, i) => ({ sender: `other ${i}`, ticks: 1 }));
    const told = await run([{ sender: "slow", ticks: 500 }, ...others]);
    expect(told.at(-1)?.sender).toBe("slow");
  });

  it("are never more than two, never two of one sender, and everybody's come, in each sender's order", async () => {
    const piece = fc.record({ sender: fc.constantFrom("a", "b", "c", "d"), ticks: fc.nat(4) });
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 30 }), async (sent) => {
        const told = await run(sent);
        const running: string[] = [];
        for (const { sender, what } of told) {
          if (what === "end") running.splice(running.indexOf(sender), 1);
          else running.push(sender);
          expect(running.length).toBeLessThanOrEqual(2);
          expect(new Set(running).size).toBe(running.length);
        }
        expect(told.length).toBe(2 * sent.length);
        // Between two turns of a sender everybody else who waits has at most one more than one.
        const begins = told.filter(({ what }) => what === "begin").map(({ sender }) => sender);
        for (const sender of new Set(begins))
          expect(begins.filter((one) => one === sender).length).toBe(
            sent.filter((one) => one.sender === sender).length,
          );
      }),
      { numRuns: 60, seed: 20261126 },
    );
  });

  it("fail for their own asker alone", async () => {
    const broken = inTurn("a", async () => {
      throw new Error("broken");
    });
    const fine = inTurn("a", async () => "fine");
    await expect(broken).rejects.toThrow("broken");
    expect(await fine).toBe("fine");
  });
});
