import { fail, issue, ok, type Result } from "@/lib/base";
import type { ExchangeIssue } from "./issue";

/** 500 points of two coordinates with every digit of a double fit; a picture does not. */
export const MOST_SVG_CHARACTERS = 40_000;

export interface Tag {
  readonly name: string;
  readonly kind: "open" | "close" | "empty";
  readonly attributes: ReadonlyMap<string, string>;
}

const DECLARATION = /^\s*<\?xml\s[^<>]*\?>/;
const TAG = /<(\/?)([A-Za-z_][\w:.-]*)((?:\s+[A-Za-z_:][\w:.-]*\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>/y;
const ATTRIBUTE = /([A-Za-z_:][\w:.-]*)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/g;

/** Everything of XML beyond elements and attributes: none of it can be part of an area. */
const foreign: readonly (readonly [RegExp, string])[] = [
  [/<!DOCTYPE/i, "a DOCTYPE"],
  [/<!ENTITY/i, "an entity declaration"],
  [/<!\[CDATA\[/i, "a CDATA section"],
  [/<!--/, "a comment"],
  [/<\?/, "a processing instruction"],
  [/&/, "an entity"],
];

/**
 * The tags of a small SVG text in order. A reader of its own instead of an XML parser: what it does not know it
 * refuses, so nothing is ever fetched, expanded or run. Issues: `svg-too-large`, `svg-refused`, `svg-unreadable`.
 */
export function svgTags(text: string): Result<readonly Tag[], ExchangeIssue> {
  if (text.length > MOST_SVG_CHARACTERS)
    return fail(issue("svg-too-large", [], { characters: text.length, most: MOST_SVG_CHARACTERS }));
  const body = text.replace(DECLARATION, "");
  const found = foreign.find(([pattern]) => pattern.test(body));
  if (found) return fail(issue("svg-refused", [], { what: found[1] }));
  const tags: Tag[] = [];
  let at = 0;
  for (;;) {
    at += /^\s*/.exec(body.slice(at))?.[0].length ?? 0;
    if (at === body.length) return ok(tags);
    TAG.lastIndex = at;
    const match = TAG.exec(body);
    if (!match) {
      const problem = body[at] === "<" ? "broken tag" : "text between tags";
      return fail(issue("svg-unreadable", [], { problem }));
    }
    const tag = readTag(match);
    if (!tag) return fail(issue("svg-unreadable", [], { problem: "attribute given twice" }));
    tags.push(tag);
    at = TAG.lastIndex;
  }
}

function readTag([, slash = "", name = "", list = "", empty = ""]: RegExpExecArray): Tag | null {
  const attributes = new Map<string, string>();
  for (const [, key = "", double, single] of list.matchAll(ATTRIBUTE)) {
    if (attributes.has(key)) return null;
    attributes.set(key, double ?? single ?? "");
  }
  const kind = slash ? "close" : empty ? "empty" : "open";
  // The namespace prefix the recommendation's own examples use.
  return { name: name.replace(/^svg:/, ""), kind, attributes };
}
