import type { Page } from "playwright-core";

interface Early {
  readonly done: Map<unknown, unknown>;
  readonly here: boolean;
}

/** Whether the page took up what was done before it was here: React listens, but in what comes later. */
export const isListenedTo = (page: Page): Promise<boolean> =>
  page.evaluate(() => (globalThis as { __early?: Early }).__early?.here === true);

/**
 * Waits until React listens and was told of all that was done before. What the page says of itself until then ("saved", a
 * box not ticked) is what the server wrote. A test that looks at once at what came of a press begins with this.
 */
export async function listened(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const early = (globalThis as { __early?: Early }).__early;
    return early?.here === true && early.done.size === 0;
  });
}
