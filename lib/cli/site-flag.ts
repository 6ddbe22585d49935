import { envOfSite, isManySites, loadSites, SitesError } from "@/lib/sites";

function leave(sentence: string): never {
  console.error(sentence);
  process.exit(2);
}

/** Takes "--site NAME" or "--site=NAME" out of the words of a command; null: it is not among them. */
export function siteAmong(words: string[]): string | null {
  const at = words.findIndex((word) => word === "--site" || word.startsWith("--site="));
  if (at < 0) return null;
  const [flag = "", next] = words.splice(at, words[at] === "--site" ? 2 : 1);
  return flag.includes("=") ? flag.slice("--site=".length) : (next ?? "");
}

/**
 * The one reader of `--site NAME`, for every command that looks after a data folder: from here on this process is one of that
 * site alone, as if there were no other. Ends the process where there is no such site. Whether a site was named.
 */
export function takeSite(): boolean {
  const name = siteAmong(process.argv);
  if (name === null) return false;
  if (!isManySites())
    leave("--site chooses among several sites; TOELINE_SITES names the file that says them.");
  try {
    const sites = loadSites();
    const site = sites.find((one) => one.name === name);
    if (!site)
      leave(
        `There is no site ${name || "without a name"}. Sites: ${sites.map((one) => one.name).join(", ")}.`,
      );
    Object.assign(process.env, envOfSite(site));
  } catch (error) {
    if (error instanceof SitesError) leave(error.message);
    throw error;
  }
  return true;
}

/** As `takeSite`, for a command that cannot do without: where several sites are served it must say for which. */
export function needSite(): void {
  if (takeSite() || !isManySites() || process.argv.includes("--help")) return;
  leave("Several sites are served here: say which one this is for, with --site NAME.");
}
