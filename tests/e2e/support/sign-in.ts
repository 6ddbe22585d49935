import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { PATIENT_MS } from "../../setup/patience";

/** A new browser window signed in at the first page. */
export async function signIn(
  browser: Browser,
  url: string,
  account: { readonly name: string; readonly passphrase: string },
  device: BrowserContextOptions,
): Promise<Page> {
  const page = await (await browser.newContext(device)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  await page.goto(url);
  await page.waitForURL(/\/sign-in$/);
  await page.getByLabel("Sign-in name").fill(account.name);
  await page.getByLabel("Passphrase").fill(account.passphrase);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(`${url}/`);
  return page;
}
