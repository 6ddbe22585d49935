import { existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const app = fileURLToPath(new URL("../../app", import.meta.url));

/** Whether a page, and no file or door for machines, lies at an address of ours. */
function isPage(segments, folder = app) {
  const [first, ...rest] = segments;
  if (first === undefined) return existsSync(path.join(folder, "page.tsx"));
  if (!existsSync(folder)) return false;
  return readdirSync(folder)
    .filter((name) => name === first || /^\[\w+\]$/.test(name))
    .some((name) => isPage(rest, path.join(folder, name)));
}

/** A page is led to by Next's own link, which keeps what is on the screen; what is no page, or opens beside it, by a plain one. */
export const pageLink = {
  meta: { type: "problem", schema: [], messages: { link: "{{to}} is a page: use Link of next/link." } },
  create(context) {
    return {
      JSXOpeningElement(node) {
        if (node.name.name !== "a") return;
        const said = (attribute) =>
          node.attributes.find(({ name }) => name?.name === attribute)?.value?.value;
        const href = said("href");
        if (typeof href !== "string" || !href.startsWith("/") || said("target") === "_blank") return;
        const segments = href.split(/[?#]/)[0].split("/").filter(Boolean);
        if (isPage(segments)) context.report({ node, messageId: "link", data: { to: href } });
      },
    };
  },
};
