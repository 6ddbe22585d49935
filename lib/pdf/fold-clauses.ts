/** The table or clause a reference begins with, and the rest of it: "Table 1" and "1.7". */
function parted(reference: string): readonly [head: string, rest: string] {
  const comma = reference.indexOf(", ");
  return comma < 0 ? [reference, ""] : [reference.slice(0, comma), reference.slice(comma + 2)];
}

/** "Table 1, 1.7; Table 1, 1.10; 7.24" as "Table 1: 1.7, 1.10; 7.24": what several references share is named once. */
export function foldClauses(references: string): string {
  const groups: { readonly head: string; readonly rests: string[] }[] = [];
  for (const reference of references.split("; ")) {
    const [head, rest] = parted(reference);
    const last = groups.at(-1);
    if (last?.head === head && rest !== "" && !last.rests.includes("")) last.rests.push(rest);
    else groups.push({ head, rests: [rest] });
  }
  return groups.map(({ head, rests }) => folded(head, rests)).join("; ");
}

function folded(head: string, rests: readonly string[]): string {
  const [only = ""] = rests;
  if (rests.length > 1) return `${head}: ${rests.join(", ")}`;
  return only === "" ? head : `${head}, ${only}`;
}
