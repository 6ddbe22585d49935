import { browserFile } from "./browser";

/** Once before all: two workers that unpacked it at the same time would start it half written. */
export default async function unpackBrowser(): Promise<void> {
  await browserFile();
}
