import type { MeasuredMark, Quantity } from "@/lib/measure";
import { formatQuantity, lengthSystem, metric, type UnitPreferences } from "@/lib/units";
import { BudgetList } from "./budget-list";
import styles from "./mark-card.module.css";

const figures = [
  ["lengthMm", "Length"],
  ["diameterMm", "Diameter"],
  ["depthMm", "Depth"],
  ["heightMm", "Height"],
  ["areaMm2", "Area"],
] as const;

/** Each size of a mark with, on request, the parts of its uncertainty, largest first, and what makes each smaller. */
export function MarkCardBudget({
  measured,
  units = metric,
}: {
  measured: MeasuredMark;
  units?: UnitPreferences | undefined;
}) {
  const sizes = figures.flatMap(([key, name]) => {
    const quantity = measured[key];
    return quantity === null || quantity.budget.length === 0 ? [] : [{ name, quantity }];
  });
  if (sizes.length === 0) return null;
  return (
    <div className={styles.budgets}>
      {sizes.map(({ name, quantity }) => (
        <details key={name} className={styles.budget}>
          <summary>
            {name} {valueText(quantity, units)}: what the ± is made of
          </summary>
          <BudgetList quantity={quantity} units={units} />
        </details>
      ))}
    </div>
  );
}

function valueText({ unit, value, expandedUncertainty }: Quantity, units: UnitPreferences): string {
  return formatQuantity(
    unit === "mm" ? "length" : "area",
    value,
    lengthSystem(units.length),
    expandedUncertainty,
  );
}
