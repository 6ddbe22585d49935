import { Button, Panel } from "@/components/ui";
import { readShopSetId, type CriteriaSummary } from "@/lib/accept";

/** The newest version among `criteria` of the shop's limits that `chosen` is an older version of; null for none. */
export function newerVersion(
  chosen: string | null,
  criteria: readonly CriteriaSummary[],
): CriteriaSummary | null {
  const read = chosen === null ? null : readShopSetId(chosen);
  if (read === null) return null;
  return criteria
    .filter(({ shop }) => shop !== null && shop.key === read.key && shop.version > read.version)
    .reduce<CriteriaSummary | null>(
      (newest, one) => ((newest?.shop?.version ?? 0) < (one.shop?.version ?? 0) ? one : newest),
      null,
    );
}

/** Says that the shop has changed these limits since, and that what was judged by the old ones still is. */
export function NewerVersion({
  chosen,
  criteria,
  what,
  onTake,
}: {
  readonly chosen: string | null;
  readonly criteria: readonly CriteriaSummary[];
  /** "bead", "exercise", "job" */
  readonly what: string;
  readonly onTake?: (id: string) => void;
}) {
  const newer = newerVersion(chosen, criteria);
  if (newer === null || newer.shop === null || chosen === null) return null;
  return (
    <Panel tone="straw" title={`There is a version ${newer.shop.version} of these limits`}>
      <p>
        This {what} keeps version {readShopSetId(chosen)?.version}, by which it was to be judged, until
        somebody chooses otherwise.
      </p>
      {onTake && <Button onClick={() => onTake(newer.id)}>Judge by version {newer.shop.version}</Button>}
    </Panel>
  );
}
