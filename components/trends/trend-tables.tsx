import Link from "next/link";
import { ShareBar } from "./share-bar";
import type { GroupLine, ParetoLine, RejectPoint } from "./trend-links";
import styles from "./trends.module.css";

const percent = (value: number): string => `${(value * 100).toFixed(1)} %`;

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
      <table className={styles.table}>
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

function Name({ href, name }: { href: string; name: string }) {
  return (
    <th scope="row">
      <Link href={href} className={styles.link}>
        {name}
      </Link>
    </th>
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
    <Rows caption={caption} heads={[what, "Beads", "Share of all found", "With those above"]}>
      {lines.map(({ key, href, name, count, share, cumulative }) => (
        <tr key={key}>
          <Name href={href} name={name} />
          <td>{count}</td>
          <td>{share}</td>
          <td>{cumulative}</td>
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
        <tr key={label}>
          <Name href={href} name={label} />
          <td>{text}</td>
          <td>{percent(lowerLimit)}</td>
          <td>{percent(upperLimit)}</td>
          <td>
            {[beyond && `${beyond} its limit`, rough && "too few beads for firm limits"]
              .filter(Boolean)
              .join("; ")}
          </td>
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
      {lines.map(({ key, href, name, beads, share, value, low, high, mostSeen }) => (
        <tr key={key}>
          <Name href={href} name={name} />
          <td>{beads}</td>
          <td>{share}</td>
          <td>
            <ShareBar value={value} low={low} high={high} />
          </td>
          <td>{mostSeen ?? "nothing marked"}</td>
        </tr>
      ))}
    </Rows>
  );
}
