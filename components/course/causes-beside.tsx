import { page, Panel } from "@/components/ui";
import type { SheetCause } from "@/lib/report";

/** The likely causes beside the instructor's own eye. */
export function CausesBeside({ causes, marked }: { causes: readonly SheetCause[]; marked: boolean }) {
  if (!marked || causes.length === 0) return null;
  return (
    <Panel title="Likely causes, from the marks and the set-up" tone="bronze">
      <ol>
        {causes.map(({ name, chance, speaksFor }) => (
          <li key={name}>
            <strong>{name}</strong>, {chance}
            {speaksFor[0] && <p className={page.note}>{speaksFor[0]}</p>}
          </li>
        ))}
      </ol>
    </Panel>
  );
}
