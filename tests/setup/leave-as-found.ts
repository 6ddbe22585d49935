import { afterAll, vi } from "vitest";

/** What a test file spied on, or told its process, is taken back before the next file of that process. */
afterAll(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});
