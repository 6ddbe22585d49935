import { readdirSync } from "node:fs";
import path from "node:path";
import { issue } from "@/lib/base";
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

/** Whether nothing is there yet, locks aside. */
export function isEmptyFolder(folder: string): boolean {
  try {
    return readdirSync(folder).every((name) => /\.lock(-journal|-wal|-shm)?$/.test(name));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return true;
    throw error;
  }
}
