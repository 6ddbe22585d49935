import vm from "node:vm";
import { afterEach, describe, expect, it, vi } from "vitest";
import { chooseLook, lookChoice, lookScript, showLook } from "@/components/shell/look";

type Stored = string | null | "refuses";

/** As much of a browser as a look asks for. */
function browser(stored: Stored, deviceIsDark: boolean) {
  const dataset: Record<string, string> = {};
  let kept = stored;
  const refuse = () => {
    throw new Error("this browser keeps nothing");
  };
  const localStorage = {
    getItem: () => (kept === "refuses" ? refuse() : kept),
    setItem: (_: string, value: string) => (kept === "refuses" ? refuse() : void (kept = value)),
  };
  const told: string[] = [];
  return {
    told,
    dataset,
    globals: {
      localStorage,
      document: { documentElement: { dataset } },
      matchMedia: () => ({ matches: deviceIsDark }),
      dispatchEvent: (event: Event) => told.push(event.type),
    },
  };
}

const cases = ([null, "auto", "light", "dark", "purple", "refuses"] as const).flatMap((stored) =>
  [true, false].map((isDark) => ({ stored, isDark })),
);
/** What was chosen stands; whatever else is there, the device says. */
const expected = (stored: Stored, isDark: boolean) =>
  stored === "light" || stored === "dark" ? stored : isDark ? "dark" : "light";

afterEach(() => vi.unstubAllGlobals());

describe("the look of a page", () => {
  it.each(cases)("before the first painting: kept $stored, dark device $isDark", ({ stored, isDark }) => {
    const { dataset, globals } = browser(stored, isDark);
    vm.runInNewContext(lookScript, globals);
    expect(dataset["look"]).toBe(expected(stored, isDark));
  });

  it.each(cases)("and after it the same: kept $stored, dark device $isDark", ({ stored, isDark }) => {
    const { dataset, globals } = browser(stored, isDark);
    for (const [name, value] of Object.entries(globals)) vi.stubGlobal(name, value);
    showLook();
    expect(dataset["look"]).toBe(expected(stored, isDark));
  });

  it("is kept when it is chosen, and told", () => {
    const { globals, told } = browser(null, false);
    for (const [name, value] of Object.entries(globals)) vi.stubGlobal(name, value);
    expect(lookChoice()).toBe("auto");
    chooseLook("dark");
    expect(lookChoice()).toBe("dark");
    expect(told).toEqual(["toeline-look"]);
  });

  it("holds for this page where the browser keeps nothing", () => {
    const { globals, dataset } = browser("refuses", false);
    for (const [name, value] of Object.entries(globals)) vi.stubGlobal(name, value);
    chooseLook("dark");
    showLook();
    expect(dataset["look"]).toBe("dark");
    chooseLook("auto");
  });
});
