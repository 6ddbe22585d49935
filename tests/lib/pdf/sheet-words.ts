import { foldClauses } from "@/lib/pdf/fold-clauses";
import type { SheetDocument } from "@/lib/report";
import { plain, type ReadPage } from "./read-pdf";

export const withoutSpaces = (text: string): string => text.replace(/\s+/g, "");

/** What is no text of the page: the drawing stands on the photo, its words beside the marks where they find room. */
const drawn = /^(sha256|role|drawing|labels|scaleLabel)$/;

/** Every text of a document with its key, whatever there is in it: what is added to it later is looked for too. */
function texts(value: unknown, key = ""): readonly string[] {
  if (typeof value === "string") return [key === "clause" ? foldClauses(value) : value];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) =>
    drawn.test(name) ? [] : texts(part, Array.isArray(value) ? key : name),
  );
}

/** Signs that no file of the face has are written another way. */
const asWritten = (text: string): string =>
  plain(text).replaceAll("⌀", "Ø").replaceAll("₂", "2").replaceAll("≤", "<=").replaceAll("≥", ">=");

/** Head and foot of later pages may stand between two lines of one paragraph, so they are taken out; the foot of an only page lies lower. */
export function bodyOf(pages: readonly ReadPage[]): string {
  const foot = pages.length === 1 ? 52 : 70;
  const inBody = ({ y }: { y: number }, page: number) => y > foot && (page === 0 || y < 790);
  return plain(
    pages
      .map((page, i) =>
        page.items
          .filter((item) => inBody(item, i))
          .map(({ text }) => text)
          .join(" "),
      )
      .join(" "),
  );
}

/** What a document says and its pages do not; `sheet` may be a part of one. */
export function unsaid(sheet: Partial<SheetDocument>, pages: readonly ReadPage[]): readonly string[] {
  const body = withoutSpaces(bodyOf(pages));
  return texts(sheet)
    .map(asWritten)
    .filter((words) => !body.includes(withoutSpaces(words)));
}
