import type { Page } from "playwright-core";

/**
 * The page gets no rest (`requestIdleCallback` is held back), so that what it fetches and does at rest does not come before
 * `giveRest`: it has to stand without.
 */
export async function withoutRest(page: Page): Promise<{ readonly giveRest: () => Promise<void> }> {
  await page.addInitScript(`{
    const rest = globalThis.requestIdleCallback;
    const held = [];
    globalThis.requestIdleCallback = (...asked) => held.push(asked);
    globalThis.giveRest = () => {
      globalThis.requestIdleCallback = rest;
      for (const asked of held) rest(...asked);
    };
  }`);
  return { giveRest: () => page.evaluate("giveRest()") };
}
