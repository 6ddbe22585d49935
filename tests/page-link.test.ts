import { expect, test } from "vitest";
import { lintCode } from "./setup/lint-code";

test("a page is led to by Next's link, a file, a door for machines and another window by a plain one", () => {
  const links = [
    "/strip",
    "/beads/some-id/sheet?print=1",
    "/strip/strip.pdf",
    "/api/log",
    "/nowhere",
    "#here",
  ];
  const codes = links.map((href) => `export const a = <a href="${href}">x</a>;`);
  const beside = `export const a = <a href="/strip" target="_blank">x</a>;`;
  expect(lintCode("page-link", [...codes, beside])).toEqual([
    ["/strip is a page: use Link of next/link."],
    ["/beads/some-id/sheet?print=1 is a page: use Link of next/link."],
    [],
    [],
    [],
    [],
    [],
  ]);
});
