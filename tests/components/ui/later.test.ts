import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { later } from "@/components/ui/later";

/** A browser that rests when it is told to. */
function browserAtWork(isOpen: boolean) {
  const rests: (() => void)[] = [];
  const opened: (() => void)[] = [];
  vi.stubGlobal("document", { readyState: isOpen ? "complete" : "loading" });
  vi.stubGlobal("window", {
    requestIdleCallback: (run: () => void) => rests.push(run),
    cancelIdleCallback: (id: number) => rests.splice(id - 1, 1, () => undefined),
    addEventListener: (_: string, run: () => void) => opened.push(run),
    removeEventListener: (_: string, run: () => void) => opened.splice(opened.indexOf(run), 1),
  });
  return {
    rest: () => rests.splice(0).forEach((run) => run()),
    open: () => opened.splice(0).forEach((run) => run()),
  };
}

/** Code that comes after so many tries. */
function codeAfter(failures: number) {
  let asked = 0;
  const code = later(async () => {
    asked += 1;
    if (asked <= failures) throw new Error("no line");
    return "code";
  });
  return { code, asked: () => asked };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("code that comes later", () => {
  it("comes once, however often it is asked for, and tells whoever waits", async () => {
    const { code, asked } = codeAfter(0);
    const told = vi.fn<() => void>();
    code.subscribe(told);
    expect(code.now()).toBeNull();
    expect(await Promise.all([code.load(), code.load()])).toEqual(["code", "code"]);
    await code.load();
    expect([asked(), told.mock.calls.length, code.now(), await code.arrival()]).toEqual([
      1,
      1,
      "code",
      "code",
    ]);
  });

  it("may be asked for again where it could not come", async () => {
    const { code } = codeAfter(1);
    await expect(code.load()).rejects.toThrow("no line");
    expect(code.now()).toBeNull();
    expect(await code.load()).toBe("code");
  });

  it("waits until the page stands and the browser rests", async () => {
    const browser = browserAtWork(false);
    const { code, asked } = codeAfter(0);
    code.loadAtRest();
    browser.rest();
    expect(asked()).toBe(0);
    browser.open();
    expect(asked()).toBe(0);
    browser.rest();
    expect(asked()).toBe(1);
    expect(await code.arrival()).toBe("code");
  });

  it("is asked for at rest again and again while the line is away, until nobody wants it", async () => {
    const browser = browserAtWork(true);
    const coming = codeAfter(2);
    coming.code.loadAtRest();
    const given = codeAfter(Infinity);
    const stop = given.code.loadAtRest();
    browser.rest();
    await vi.advanceTimersByTimeAsync(60_000);
    expect([coming.code.now(), coming.asked()]).toEqual(["code", 3]);
    const before = given.asked();
    expect(before).toBeGreaterThan(3);
    stop();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(given.asked()).toBe(before);
  });

  it("is not asked for again where nobody waits any more when a try fails", async () => {
    const browser = browserAtWork(true);
    const tries: (() => void)[] = [];
    const code = later(
      () => new Promise<string>((_, reject) => tries.push(() => reject(new Error("no line")))),
    );
    const stop = code.loadAtRest();
    browser.rest();
    stop();
    tries[0]!();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(tries).toHaveLength(1);
  });

  it("is not asked for where nobody waits any more when the browser rests", () => {
    for (const isOpen of [true, false]) {
      const browser = browserAtWork(isOpen);
      const { code, asked } = codeAfter(0);
      code.loadAtRest()();
      browser.open();
      browser.rest();
      expect(asked()).toBe(0);
    }
  });
});
