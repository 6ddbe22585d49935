import type { Condition, Criterion } from "../rule";
import type { CriteriaSetting } from "../verdict";
import { cyclicRows, d11Source, staticRows } from "./d1-1";

/** Until 2010 one column held tubular connections of every loading to the cyclic figures; later editions not seen. */
export const tubularLoading: CriteriaSetting = {
  id: "tubularLoading",
  title: "Undercut and pores of tubular connections",
  choices: [
    { value: "cyclic", title: "by the figures for cyclic loading" },
    { value: "static", title: "by the figures for static loading" },
  ],
  default: "cyclic",
  note: "Which figures Table 10.15 asks for under static loading is not known to us: your copy or the Engineer says. The stricter ones come first.",
};

/** The figures of Table 8.1 as Table 10.15 is remembered to repeat them. */
function asTubular(number: 7 | 8, name: string, title: string): Criterion {
  const clause = `Table 10.15 (${number})`;
  const ending = `-${number}-${name}`;
  const [still, cyclic] = [staticRows, cyclicRows].map((rows) => rows.find(({ id }) => id.endsWith(ending)));
  const under = (row: Criterion | undefined, more: readonly Condition[]): Criterion["variants"] =>
    (row?.variants ?? []).map(({ when, tests }) => ({
      when: [...more, ...when],
      tests,
      source: d11Source(clause, "memory", "figure of Table 8.1; that Table 10.15 repeats it is from memory"),
    }));
  return {
    id: `aws-d1-1-tubular${ending}`,
    clause,
    title,
    imperfections: cyclic?.imperfections ?? [],
    variants: [...under(still, [{ setting: tubularLoading.id, is: "static" }]), ...under(cyclic, [])],
  };
}

export const tubularRows: readonly Criterion[] = [
  asTubular(7, "undercut", "Undercut, depth (and length, where static figures are used)"),
  asTubular(8, "porosity", "Piping porosity"),
];
