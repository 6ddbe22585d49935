import type { Page, Route } from "playwright-core";

/** From `hold` until `let` none of the page's scripts come: what the server wrote stands there, and nobody listens. */
export async function heldScripts(
  page: Page,
): Promise<{ readonly hold: () => void; readonly let: () => Promise<void> }> {
  const held: Route[] = [];
  let isHeld = false;
  await page.route(/\/_next\/static\/.*\.js/, async (route) => {
    if (isHeld) held.push(route);
    else await route.continue();
  });
  return {
    hold: () => {
      isHeld = true;
    },
    let: async () => {
      isHeld = false;
      await Promise.all(held.map((route) => route.continue()));
    },
  };
}
