import "server-only";

export { currentSite, inSite, ofSite } from "./current.mjs";
export { envOfSite, isManySites, loadSites, SitesError, type Site } from "./sites.mjs";
