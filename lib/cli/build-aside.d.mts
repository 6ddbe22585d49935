/** Bundles a script that runs in a thread of its own; returns where it lies. `from`: below `root`; left out, all of lib/aside. */
export function buildAside(
  root: string,
  where?: { readonly from?: string; readonly to?: string },
): Promise<string>;
