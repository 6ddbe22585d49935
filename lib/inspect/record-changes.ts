import { canonicalJson } from "@/lib/base";
import { beadRows } from "./bead-rows";
import { recordSections, resultNames } from "./record-sections";
import type { SignedRecord } from "./signed-record";

/** Everything a record says, each statement under its own path: "Weld W3 › Seen". */
function statements(record: SignedRecord): ReadonlyMap<string, string> {
  const all = new Map<string, string>();
  // Two statements of one path stand side by side, so that neither hides the other.
  const put = (path: string, value: string) => {
    const there = all.get(path);
    all.set(path, there === undefined ? value : `${there} | ${value}`);
  };
  put("Result", resultNames[record.result]);
  for (const { title, rows } of recordSections(record))
    for (const { label, value } of rows) put(`${title} › ${label}`, value);
  for (const bead of record.beads) {
    put(`Bead ${bead.number} › Title`, bead.title);
    for (const { label, value } of beadRows(bead)) put(`Bead ${bead.number} › ${label}`, value);
  }
  for (const { sentence } of record.points) put(`Points › ${sentence}`, "noted");
  return all;
}

/**
 * What the later record says otherwise than the earlier, one plain line each: "Viewing conditions › Light at the
 * surface: was 300 lx, now 520 lx". Where only drawings or set-up moved without any statement changing, the bead is
 * named. Empty when both say the same.
 */
export function recordChanges(before: SignedRecord, after: SignedRecord): readonly string[] {
  const [old, now] = [statements(before), statements(after)];
  const changed = [...now].flatMap(([path, value]) => {
    const was = old.get(path);
    if (was === value) return [];
    if (was === undefined) return [value === "noted" ? `${path} New.` : `${path}: new, ${value}`];
    return [`${path}: was ${was}, now ${value}`];
  });
  const gone = [...old.keys()]
    .filter((path) => !now.has(path))
    .map((path) =>
      path.startsWith("Points › ")
        ? `${path} No longer so.`
        : `${path}: no longer there, was ${old.get(path)}`,
    );
  return [...changed, ...gone, ...quietChanges(before, after)];
}

/** Set-up and drawings hold more than the lines above say; a change in them is named, not spelt out. */
function quietChanges(before: SignedRecord, after: SignedRecord): readonly string[] {
  return after.beads.flatMap((bead) => {
    const was = before.beads.find(({ id }) => id === bead.id);
    if (!was) return [];
    const lines: string[] = [];
    if (canonicalJson(was.setup) !== canonicalJson(bead.setup))
      lines.push(`Bead ${bead.number} › Set-up: changed`);
    for (const [i, photo] of bead.photos.entries()) {
      const old = was.photos.find(({ id }) => id === photo.id);
      if (old && canonicalJson(old.drawing) !== canonicalJson(photo.drawing))
        lines.push(`Bead ${bead.number} › Drawing on photo ${i + 1}: changed`);
    }
    return lines;
  });
}
