const LABEL = "[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?";
const HOST = new RegExp(`^(${LABEL}(?:\\.${LABEL})*)\\.?(?::\\d{1,5})?$`);

/**
 * The name in a Host header as we compare it: small letters, without port and without the root's dot. Null: it is no name
 * of a host, whatever else somebody wrote there.
 */
export function hostName(value) {
  const name = HOST.exec(value.toLowerCase())?.[1] ?? null;
  return name !== null && name.length <= 253 ? name : null;
}

/** Every value that a request gives under this name: a proxy and we might each believe another one. */
export function valuesOf(rawHeaders, wanted) {
  const found = [];
  for (let i = 0; i + 1 < rawHeaders.length; i += 2)
    if (rawHeaders[i].toLowerCase() === wanted) found.push(rawHeaders[i + 1]);
  return found;
}

/**
 * Which site a request is for; null: for none of them. One Host alone counts. `x-forwarded-host` counts where a proxy is
 * known to stand in front, its last entry, and only where the Host itself names no site or the same one: so nobody is led
 * past a rule that the proxy has for a name.
 */
export function siteOfRequest(sites, { url, rawHeaders }, trustsProxy) {
  // A target with a host of its own ("GET http://…") would be a second opinion.
  if (!url.startsWith("/")) return null;
  const [host, ...others] = valuesOf(rawHeaders, "host");
  if (host === undefined || others.length > 0) return null;
  const named = (value) => {
    const name = hostName(value);
    return sites.find(({ hosts }) => hosts.includes(name)) ?? null;
  };
  const own = named(host);
  const told = trustsProxy ? valuesOf(rawHeaders, "x-forwarded-host") : [];
  if (told.length === 0) return own && { site: own, host };
  const last = told.at(-1).split(",").at(-1).trim();
  const ahead = named(last);
  return ahead !== null && (own === null || own === ahead) ? { site: ahead, host: own ? host : last } : null;
}
