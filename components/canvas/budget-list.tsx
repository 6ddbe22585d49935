import { budgetLines, type Quantity } from "@/lib/measure";
import { formatFigures, lengthSystem, type UnitPreferences } from "@/lib/units";
import styles from "./mark-card.module.css";

/** The parts of a figure's uncertainty, largest first, and what makes each smaller. */
export function BudgetList({ quantity, units }: { quantity: Quantity; units: UnitPreferences }) {
  return (
    <>
      <ul className={styles.budgetParts}>
        {budgetLines(quantity).map(({ part, u, share, sentence, name }) => (
          <li key={part}>
            <span className={styles.share}>{shareText(share)}</span>
            <div>
              <strong>
                {name} {amountText(u, quantity.unit, units)}
              </strong>
              <p>{sentence}</p>
            </div>
          </li>
        ))}
      </ul>
      <p className={styles.hint}>
        Each part is a standard uncertainty. They add in squares; the ± is the half-width that holds the truth
        in about 95 of 100 cases.
      </p>
    </>
  );
}

const shareText = (share: number): string => (share < 0.01 ? "under 1 %" : `${Math.round(100 * share)} %`);

const printedAs = { mm: "length", mm2: "area", deg: "angle", ratio: "share" } as const;

/** Two digits say how large an uncertainty is; its own decimals would round the small parts to nought. */
function amountText(u: number, unit: Quantity["unit"], units: UnitPreferences): string {
  return formatFigures(printedAs[unit], u, lengthSystem(units.length), 2);
}
