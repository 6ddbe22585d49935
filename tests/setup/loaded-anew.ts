import { afterAll, vi } from "vitest";

/**
 * For files that replace modules or change what the process is told from outside: each begins with modules of its own and
 * leaves the process as it was told. Packages stay loaded: to load them for each file costs more than most of these tests.
 */
vi.resetModules();
const told = { ...process.env };
afterAll(() => {
  for (const name of Object.keys(process.env)) if (!(name in told)) delete process.env[name];
  Object.assign(process.env, told);
});
