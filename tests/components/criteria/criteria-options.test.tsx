import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { CriteriaOptions } from "@/components/criteria/criteria-options";
import { listCriteria, ShopCriteriaSchema } from "@/lib/accept";

const own = ShopCriteriaSchema.parse({
  id: "shop-stringers",
  title: "Stringers",
  version: 2,
  author: "Instructor",
  rows: [{ id: "w", title: "Width", imperfections: [], quantity: "width", limit: 9 }],
});
const criteria = listCriteria([own]);
const html = renderToStaticMarkup(
  <select>
    <CriteriaOptions criteria={criteria} />
  </select>,
);
const plain = (text = ""): string => text.replaceAll("&#x27;", "'");
const groups = [...html.matchAll(/<optgroup label="([^"]*)">(.*?)<\/optgroup>/g)].map(
  ([, label, inside]) => ({
    label: plain(label),
    options: [...(inside ?? "").matchAll(/<option value="([^"]*)">([^<]*)</g)].map(([, id, text]) => ({
      id,
      text: plain(text),
    })),
  }),
);

it("groups the sets by document, the shop's own apart and first, each set once", () => {
  expect(groups[0]?.label).toBe("The shop's own, not a code");
  expect(groups[0]?.options.map(({ id }) => id)).toEqual(["shop-stringers@2"]);
  const documents = groups.slice(1).map(({ label }) => label);
  expect(new Set(documents).size).toBe(documents.length);
  expect(documents).toContain("ISO 5817");
  expect(groups.flatMap(({ options }) => options.map(({ id }) => id)).sort()).toEqual(
    criteria.map(({ id }) => id).sort(),
  );
});

it("shows the edition of each, so that two editions of one level are told apart", () => {
  const iso = groups.find(({ label }) => label === "ISO 5817")!.options;
  expect(iso).toContainEqual({ id: "iso-5817-c", text: "ISO 5817 level C, 2014" });
  expect(iso).toContainEqual({ id: "iso-5817-c@2023", text: "ISO 5817 level C, 2023" });
  for (const { id, edition } of criteria)
    expect(groups.flatMap(({ options }) => options).find((one) => one.id === id)?.text).toContain(edition);
});

it("knows of each set its family's editions and whether a later one is there", () => {
  const of = (id: string) => criteria.find((one) => one.id === id)!;
  expect(of("iso-5817-c").newest).toBe("iso-5817-c@2023");
  expect(of("iso-5817-c@2023").newest).toBeNull();
  expect(of("iso-5817-c@2023").editions).toEqual([
    { id: "iso-5817-c", edition: "2014" },
    { id: "iso-5817-c@2023", edition: "2023" },
  ]);
  expect(of("api-1104").newest).toBeNull();
});
