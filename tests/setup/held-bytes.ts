import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

/** What this process holds on its heap once everything that nobody needs is gone. */
export function heldBytes(): number {
  collect();
  return process.memoryUsage().heapUsed;
}
