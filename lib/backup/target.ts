import { readdirSync } from "node:fs";
import path from "node:path";
import { issue } from "@/lib/base";
import { currentSite } from "@/lib/sites";
import type { BackupIssue } from "./issue";

const isWithin = (inner: string, outer: string): boolean => {
  const way = path.relative(outer, inner);
  return way === "" || (!way.startsWith("..") && !path.isAbsolute(way));
};

/** Why a folder is no place for backups of a data folder; none: it may be one. Whether it can be written shows then. */
export function targetIssues(dataFolder: string, target: string): readonly BackupIssue[] {
  if (!path.isAbsolute(target)) return [issue("target-not-absolute")];
  const inside = isWithin(target, dataFolder) || isWithin(dataFolder, target);
  return inside ? [issue("target-in-data-folder", [], { folder: target })] : [];
}

/**
 * As `targetIssues`, of a folder that somebody chose on the screen: where several sites are served, the owner of one writes
 * to no folder of the machine but its own for backups, else old copies of another site could be thinned out as theirs.
 */
export function chosenIssues(dataFolder: string, target: string): readonly BackupIssue[] {
  const site = currentSite();
  const isOthers = site !== null && path.isAbsolute(target) && !isWithin(target, site.backups);
  return isOthers
    ? [issue("target-of-others", [], { folder: site.backups })]
    : targetIssues(dataFolder, target);
}

/** Whether nothing is there yet, locks aside. */
export function isEmptyFolder(folder: string): boolean {
  try {
    return readdirSync(folder).every((name) => /\.lock(-journal|-wal|-shm)?$/.test(name));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return true;
    throw error;
  }
}
