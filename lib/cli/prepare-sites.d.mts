import type { Site } from "@/lib/sites";

export function prepareSites(
  sites: readonly Pick<Site, "name" | "folder" | "database" | "backups">[],
): Promise<ReadonlyMap<string, string>>;
