/**
 * `npm run bench`: what people wait for, in one table beside named baselines that were measured in the same run, in turn. Names of
 * parts measure those alone: `npm run -s bench -- hand answer`. Only this run's machine is meant by the times; ratios are the
 * message. Needs a machine that does nothing else, and builds the pages where that was not done.
 */
import { buildApp } from "@/lib/cli/prepare.mjs";
import { openBrowser } from "../e2e/support/browser";
import { startServer } from "../e2e/support/server";
import { answerFigures } from "./answer";
import { table, type Figure } from "./figures";
import { handFigures } from "./hand";
import { lighthouseFigures } from "./lighthouse";
import { listFigures } from "./lists";
import { cameraJpeg, HEIGHT, WIDTH } from "./photos";
import { scriptFigures } from "./scripts";
import { shopServer } from "./shop";
import { uploadFigures } from "./upload";

async function onEmpty(part: (url: string) => Promise<readonly Figure[]>): Promise<readonly Figure[]> {
  const server = await startServer();
  try {
    return await part(server.url);
  } finally {
    await server.stop();
  }
}

async function onShop(part: typeof scriptFigures): Promise<readonly Figure[]> {
  const shop = await shopServer();
  try {
    return await part(shop);
  } finally {
    await shop.stop();
  }
}

const jpeg = (): Promise<Buffer> => cameraJpeg(WIDTH, HEIGHT);

const parts = {
  hand: () => onEmpty(async (url) => handFigures(await openBrowser(), url, await jpeg())),
  answer: () => onEmpty(async (url) => answerFigures(await openBrowser(), url, await jpeg())),
  upload: () => onEmpty(uploadFigures),
  scripts: () => onShop(scriptFigures),
  lighthouse: () => onShop(lighthouseFigures),
  lists: () => listFigures(),
} satisfies Record<string, () => Promise<readonly Figure[]>>;

type Part = keyof typeof parts;
const names = Object.keys(parts) as Part[];
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !names.includes(name as Part));
if (unknown.length > 0) {
  console.log(`npm run -s bench -- [${names.join("] [")}]     without names: all of them`);
  process.exit(unknown[0] === "--help" ? 0 : 2);
}

await buildApp();
const figures: Figure[] = [];
for (const name of names.filter((one) => asked.length === 0 || asked.includes(one))) {
  process.stderr.write(`measuring: ${name} …\n`);
  figures.push(...(await parts[name]()));
}
console.log(table(figures));
await (await openBrowser()).close();
