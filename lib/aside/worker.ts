// What runs in the thread aside. `lib/cli/build-aside.mjs` makes one file of it beside the pages.
import { parentPort } from "node:worker_threads";
import { serveWorks } from "./serve-works";
import { works } from "./works";

serveWorks(parentPort!, works);
