import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import chromium from "@sparticuz/chromium";
import { chromium as playwright, type Browser, type Page } from "playwright-core";

const shots = fileURLToPath(new URL("../../.out/shots", import.meta.url));

/** A Chromium the machine already has comes first; the one inside the npm package serves everywhere else. */
const installed = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find((file) =>
  existsSync(file),
);

// Nothing here draws with WebGL, and pages painted by an emulated graphics card cost several times the work.
chromium.setGraphicsMode = false;
/**
 * The package's own arguments are for a short-lived function: in one process the whole browser ends with its first
 * context, and without web security a page of another site could do what ours may.
 */
const packagedArgs = chromium.args.filter(
  (arg) => !/^--(single-process|disable-web-security|disable-site-isolation-trials)$/.test(arg),
);

/** The browser to run; unpacked from its package the first time. */
export const browserFile = async (): Promise<string> => installed ?? (await chromium.executablePath());

const launch = async (): Promise<Browser> =>
  playwright.launch({
    executablePath: await browserFile(),
    args: [
      ...(installed ? [] : packagedArgs),
      "--no-sandbox",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  });

let open: Promise<Browser> | null = null;

/** This worker's browser: started once, for one file after the other. It ends with the worker. */
export async function openBrowser(): Promise<Browser> {
  const found = await (open ??= launch());
  // A file whose test took the browser down must not take the next file with it.
  return found.isConnected() ? found : (open = launch());
}

/** What a file leaves when it ends: no window, no cookie. */
export async function closeWindows(browser: Browser | undefined): Promise<void> {
  for (const context of browser?.contexts() ?? []) await context.close();
}

/**
 * Windows as on a visit of which the device keeps nothing: to take in the house's files costs each new one a second of
 * processor. What is kept and served without network is the affair of the files that ask for `kept`.
 */
export const desktop = { viewport: { width: 1440, height: 900 }, serviceWorkers: "block" } as const;
export const phone = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
  serviceWorkers: "block",
} as const;

export const kept = <Device extends object>(device: Device) =>
  ({ ...device, serviceWorkers: "allow" }) as const;

/** For people who look: pictures in tests/.out/shots. `npm test` takes none of them: nobody looks there, and each takes its time. */
export async function shoot(page: Page, name: string): Promise<void> {
  if (process.env["TOELINE_SHOTS"] === "none") return;
  mkdirSync(shots, { recursive: true });
  await page.screenshot({ path: path.join(shots, `${name}.png`) });
}
