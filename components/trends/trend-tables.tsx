import Link from "next/link";
import { formatQuantity } from "@/lib/units";
import { ShareBar } from "./share-bar";
import type { GroupLine, ParetoLine, RejectPoint } from "./trend-links";
import styles from "./trends.module.css";

const percent = (value: number): string => formatQuantity("share", value, "metric");

function Rows({
  caption,
  heads,
  children,
}: {
  caption: string;
  heads: readonly string[];
  children: React.ReactNode;
}) {
  return (
    // A wide table scrolls by itself; whoever uses the keyboard must be able to get into it.
    <div className={styles.scroll} role="region" aria-label={caption} tabIndex={0}>
      <table className={styles.table} role="table">
        <caption className="visually-hidden">{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}

/** Under which words a person stands, or why a word is no person's. */
function whoText(also: readonly string[], standing: GroupLine["standing"]): string {
  if (standing === "nobody") return "typed; nobody here by that name or mark";
  if (standing === "several") return "typed; several people here go by it";
  return also.length > 0 ? `also ${also.join(", ")}` : "";
}

function Name({ href, name, note = "" }: { href: string; name: string; note?: string }) {
  return (
    <th scope="row" role="rowheader">
      <Link href={href} className={styles.link}>
        {name}
      </Link>
      {note && <small className={styles.note}> {note}</small>}
    </th>
  );
}

/** A cell that names its column itself where the screen is too narrow for columns. */
function Cell({ head, children }: { head: string; children: React.ReactNode }) {
  return (
    <td role="cell" data-head={head}>
      {children}
    </td>
  );
}

/** The numbers of a Pareto chart. */
export function ParetoTable({
  lines,
  caption,
  what,
}: {
  lines: readonly ParetoLine[];
  caption: string;
  what: string;
}) {
  return (
    <Rows caption={caption} heads={[what, "Beads", "Of all beads", "Share of all found", "With those above"]}>
      {lines.map(({ key, href, name, count, share, cumulative, ofBeads }) => (
        <tr key={key} role="row">
          <Name href={href} name={name} />
          <Cell head="Beads">{count}</Cell>
          <Cell head="Of all beads">{ofBeads}</Cell>
          <Cell head="Share of all found">{share}</Cell>
          <Cell head="With those above">{cumulative}</Cell>
        </tr>
      ))}
    </Rows>
  );
}

/** The numbers of the control chart. */
export function RejectTable({ points }: { points: readonly RejectPoint[] }) {
  return (
    <Rows caption="Rejects by period" heads={["Period", "Rejected", "Lower limit", "Upper limit", "Remark"]}>
      {points.map(({ label, href, text, lowerLimit, upperLimit, beyond, rough }) => (
        <tr key={label} role="row">
          <Name href={href} name={label} />
          <Cell head="Rejected">{text}</Cell>
          <Cell head="Lower limit">{percent(lowerLimit)}</Cell>
          <Cell head="Upper limit">{percent(upperLimit)}</Cell>
          <Cell head="Remark">
            {[beyond && `${beyond} its limit`, rough && "too few beads for firm limits"]
              .filter(Boolean)
              .join("; ")}
          </Cell>
        </tr>
      ))}
    </Rows>
  );
}

/** Groups of beads beside each other. */
export function GroupTable({ lines, what }: { lines: readonly GroupLine[]; what: string }) {
  return (
    <Rows
      caption={`Beads by ${what.toLowerCase()}`}
      heads={[what, "Beads", "Rejected of those with a verdict", "0 to 100 %", "Marked most"]}
    >
      {lines.map(({ key, href, name, beads, share, value, low, high, mostSeen, also, standing }) => (
        <tr key={key} role="row">
          <Name href={href} name={name} note={whoText(also, standing)} />
          <Cell head="Beads">{beads}</Cell>
          <Cell head="Rejected of those with a verdict">{share}</Cell>
          <Cell head="0 to 100 %">
            <ShareBar value={value} low={low} high={high} />
          </Cell>
          <Cell head="Marked most">{mostSeen ?? "nothing marked"}</Cell>
        </tr>
      ))}
    </Rows>
  );
}
