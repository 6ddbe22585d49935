import type { Done } from "@/lib/aside";

/** Whoever takes no piece for so long has gone, or holds the place on purpose. */
const STALLED_MS = 120_000;

const encoder = new TextEncoder();

interface FileSent {
  readonly type: string;
  readonly name: string;
  /** Its length, where that is known. */
  readonly bytes?: number;
  /** Called once, when the last piece went out or nobody reads on. */
  readonly ended: () => void;
}

/** A file to keep, sent while it is made: what is asked for is made, no more, and whoever breaks off or stalls stops it. */
export function download(
  parts: Done<unknown>["parts"],
  { type, name, bytes, ended }: FileSent,
  stalledMs = STALLED_MS,
): Response {
  let stalled: NodeJS.Timeout | undefined;
  const stop = async (): Promise<void> => {
    clearTimeout(stalled);
    ended();
    await parts.return?.();
  };
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      clearTimeout(stalled);
      const { value, done } = await parts.next().catch(async (error: unknown) => {
        await stop();
        throw error;
      });
      if (done) {
        ended();
        return controller.close();
      }
      controller.enqueue(typeof value === "string" ? encoder.encode(value) : value);
      stalled = setTimeout(() => {
        controller.error(new Error("nobody reads on"));
        void stop();
      }, stalledMs);
      stalled.unref();
    },
    cancel: stop,
  });
  return new Response(body, { headers: headersOf(type, name, bytes) });
}

const headersOf = (type: string, name: string, bytes: number | undefined): HeadersInit => ({
  "content-type": type,
  "content-disposition": `attachment; filename="${name}"`,
  ...(bytes === undefined ? {} : { "content-length": String(bytes) }),
  "cache-control": "private, no-store",
  "x-content-type-options": "nosniff",
});
