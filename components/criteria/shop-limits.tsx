import type { ShopCriteria } from "@/lib/accept";
import { notCarriedSentence, shopRowText } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import styles from "./criteria.module.css";

/** A version of the shop's own limits to read. */
export function ShopLimits({ set, units }: { readonly set: ShopCriteria; readonly units: UnitPreferences }) {
  return (
    <>
      <ol className={styles.limits}>
        {set.rows.map((row) => (
          <li key={row.id}>
            <strong>{shopRowText(row, units)}</strong>
            <span className={styles.soft}>{[row.title, row.note].filter(Boolean).join("; ")}</span>
          </li>
        ))}
      </ol>
      {set.notCarried && <p>{notCarriedSentence(set.notCarried)}</p>}
      {set.note && <p>{set.note}</p>}
    </>
  );
}
