/** Caches of one person's pages and pictures begin so: what is to go when they sign out. */
export const PRIVATE_CACHES = "toeline-private-";

/** Pages belong to one build: another one's scripts are not there any more. */
export const pagesCache = (build: string): string => `${PRIVATE_CACHES}pages-${build}`;
export const PHOTOS_CACHE = `${PRIVATE_CACHES}photos`;

/** Which of these caches are of no use to this build. */
export function outdated(names: readonly string[], build: string): readonly string[] {
  return names.filter((name) => name.startsWith(`${PRIVATE_CACHES}pages-`) && name !== pagesCache(build));
}

/** What is kept of a page, and under which address: a workbench, the list, or nothing. */
export function keptPage({ pathname }: Pick<URL, "pathname">): "bead" | "list" | "new" | null {
  if (pathname === "/") return "list";
  if (pathname === "/beads/new") return "new";
  return /^\/beads\/[a-z0-9]{12}$/.test(pathname) ? "bead" : null;
}
