import type { Browser, CDPSession, Page } from "playwright-core";
import { PATIENT_MS } from "../setup/patience";

/** As a phone of the middle class beside this machine: so many times slower. */
export const SLOWED = 4;
const sized = { viewport: { width: 1280, height: 800 } } as const;

export const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The page's processor made as slow as a phone's. */
export async function slowed(page: Page): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Performance.enable");
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  return cdp;
}

/** What compiles this file names functions by a helper that a page has not. */
export async function newPage(browser: Browser): Promise<Page> {
  const page = await (await browser.newContext(sized)).newPage();
  await page.addInitScript("globalThis.__name = (named) => named");
  return page;
}

/** Ours: the workbench, opened on the bead. */
export async function openOurs(browser: Browser, url: string, id: string) {
  const page = await newPage(browser);
  await page.goto(`${url}/beads/${id}`);
  await page.waitForSelector('[data-testid="bead-canvas"][data-photo-state="sharp"]', {
    timeout: PATIENT_MS,
  });
  await page
    .getByRole("button", { name: "Marks" })
    .first()
    .click()
    .catch(() => undefined);
  await wait(2500);
  const canvas = page.getByTestId("bead-canvas");
  const box = (await canvas.boundingBox())!;
  const view = async (name: string) => Number(await canvas.getAttribute(name));
  const at = async (px: number, py: number) => ({
    x: box.x + (await view("data-pan-x")) + px * (await view("data-zoom")),
    y: box.y + (await view("data-pan-y")) + py * (await view("data-zoom")),
  });
  return { page, box, at };
}

export type Opened = Awaited<ReturnType<typeof openOurs>>;
