import { page, Panel } from "@/components/ui";
import type { ratesByKind } from "@/lib/eye";
import { shareText } from "@/lib/trends";
import { imperfections, type ImperfectionId } from "@/lib/trade";

/** How somebody sees each kind: found where it is, called where it is not, and round by round. */
export function KindTable({
  rates,
  progress,
}: {
  rates: ReturnType<typeof ratesByKind>;
  /** By kind: found of those there were, round by round; "" where it was on no bead. */
  progress: readonly { readonly kind: ImperfectionId; readonly byRound: readonly string[] }[];
}) {
  return (
    <Panel title="By kind" tone="purple">
      <div className={page.scroll}>
        <table className={page.table}>
          <thead>
            <tr>
              <th scope="col">Imperfection</th>
              <th scope="col">Found where it is</th>
              <th scope="col">Called where it is not</th>
              <th scope="col">Round by round</th>
            </tr>
          </thead>
          <tbody>
            {rates.map(({ kind, hits, falseCalls }) => (
              <tr key={kind}>
                <th scope="row">{imperfections[kind].name}</th>
                <td>{shareText(hits)}</td>
                <td>{shareText(falseCalls)}</td>
                <td>
                  {progress
                    .find((one) => one.kind === kind)
                    ?.byRound.filter((text) => text !== "")
                    .join(", ")}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Panel>
  );
}
