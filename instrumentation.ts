declare global {
  // eslint-disable-next-line @typescript-eslint/no-namespace -- Node's own name for it
  namespace NodeJS {
    interface ProcessEnv {
      readonly NEXT_RUNTIME?: "nodejs" | "edge";
    }
  }
}

/**
 * Runs in the server before its first request. Next builds this file for its other runtime too, where nothing of ours
 * runs; asked just so, it leaves the rooms out there.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === "nodejs") await (await import("./instrumentation-node")).beginServing();
}
