import { budgetLines, type MeasuredMark, type Quantity } from "@/lib/measure";
import { lengthText } from "@/lib/report";
import { metric, type UnitPreferences } from "@/lib/units";
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
          <ul>
            {budgetLines(quantity).map(({ part, u, share, sentence, name: partName }) => (
              <li key={part}>
                <span className={styles.share}>{shareText(share)}</span>
                <div>
                  <strong>
                    {partName} {amountText(u, quantity.unit, units)}
                  </strong>
                  <p>{sentence}</p>
                </div>
              </li>
            ))}
          </ul>
          <p className={styles.hint}>
            Each part is a standard uncertainty. They add in squares; the ± is the half-width that holds the
            truth in about 95 of 100 cases.
          </p>
        </details>
      ))}
    </div>
  );
}

const shareText = (share: number): string => (share < 0.01 ? "under 1 %" : `${Math.round(100 * share)} %`);

function valueText({ unit, value, expandedUncertainty }: Quantity, units: UnitPreferences): string {
  if (unit === "mm") return lengthText(value, units, expandedUncertainty);
  return `${value.toPrecision(3)} ± ${expandedUncertainty.toPrecision(2)} mm²`;
}

/** Two digits say how large an uncertainty is; its own decimals would round the small parts to nought. */
function amountText(u: number, unit: Quantity["unit"], units: UnitPreferences): string {
  if (unit !== "mm") return `${u.toPrecision(2)} mm²`;
  return units.length === "in" ? `${(u / 25.4).toPrecision(2)} in` : `${u.toPrecision(2)} mm`;
}
