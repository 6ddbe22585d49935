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

/**
 * The package's own arguments are for a short-lived function: in one process the whole browser ends with its first
 * context, and without web security a page of another site could do what ours may.
 */
const packagedArgs = chromium.args.filter(
  (arg) => !/^--(single-process|disable-web-security|disable-site-isolation-trials)$/.test(arg),
);

export async function openBrowser(): Promise<Browser> {
  return playwright.launch({
    executablePath: installed ?? (await chromium.executablePath()),
    args: [
      ...(installed ? [] : packagedArgs),
      "--no-sandbox",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  });
}

export const desktop = { viewport: { width: 1440, height: 900 } } as const;
export const phone = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
} as const;

/** For people who look: every run leaves its pictures in tests/.out/shots. */
export async function shoot(page: Page, name: string): Promise<void> {
  mkdirSync(shots, { recursive: true });
  await page.screenshot({ path: path.join(shots, `${name}.png`) });
}
