import { ArrowDown, ArrowUp } from "lucide-react";
import Link from "next/link";
import { LocalTime } from "@/components/ui";
import type { BeadSummary } from "@/lib/report";
import styles from "./bead-table.module.css";
import { ChooseBox } from "./choose-box";
import { VerdictBadge } from "./verdict-badge";

/** The head of a column, and where it leads to be sorted by; null: the list has no such order. */
export interface TableColumn {
  readonly key: "number" | "title" | "welder" | "day" | "setup" | "seen" | "verdict" | "next";
  readonly label: string;
  readonly sort: { readonly href: string; readonly now: "ascending" | "descending" | "none" } | null;
}

/** The same list as rows: sorted by its heads, as far as there is such an order. */
export function BeadTable({
  beads,
  columns,
}: {
  beads: readonly BeadSummary[];
  columns: readonly TableColumn[];
}) {
  return (
    <table className={styles.table}>
      <caption className="visually-hidden">Beads</caption>
      <thead>
        <tr>
          <th scope="col" className={styles.choose}>
            <span className="visually-hidden">Chosen</span>
          </th>
          {columns.map((column) => (
            <Head key={column.key} column={column} />
          ))}
        </tr>
      </thead>
      <tbody>
        {beads.map((bead) => (
          <Row key={bead.id} bead={bead} />
        ))}
      </tbody>
    </table>
  );
}

function Head({ column: { key, label, sort } }: { column: TableColumn }) {
  if (sort === null)
    return (
      <th scope="col" data-column={key}>
        {label}
      </th>
    );
  const Arrow = sort.now === "descending" ? ArrowDown : ArrowUp;
  return (
    <th scope="col" data-column={key} aria-sort={sort.now}>
      <Link href={sort.href} className={styles.sort}>
        {label}
        {sort.now !== "none" && <Arrow size={18} aria-hidden="true" />}
      </Link>
    </th>
  );
}

function Row({ bead }: { bead: BeadSummary }) {
  return (
    <tr>
      <td className={styles.choose}>
        <ChooseBox id={bead.id} number={bead.number} />
      </td>
      <td data-column="number">{bead.number}</td>
      <th scope="row" data-column="title">
        <Link href={`/beads/${bead.id}`}>{bead.title || "No title"}</Link>
      </th>
      <td data-column="welder">{bead.welder}</td>
      <td data-column="day">
        <LocalTime iso={bead.createdAt} only="day" />
      </td>
      <td data-column="setup">{bead.setupLine}</td>
      <td data-column="seen">{bead.seen.join(" · ")}</td>
      <td data-column="verdict">{standing(bead)}</td>
      <td data-column="next">{bead.again === "advice" ? "Being weighed again" : (bead.firstChange ?? "")}</td>
    </tr>
  );
}

function standing(bead: BeadSummary) {
  if (bead.unreadable) return "Cannot be read";
  return bead.again === "all" ? "Being worked out again" : <VerdictBadge verdict={bead.verdict} />;
}
