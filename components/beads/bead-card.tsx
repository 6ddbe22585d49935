import Link from "next/link";
import { LocalTime } from "@/components/ui";
import type { BeadSummary } from "@/lib/report";
import { ChooseBox } from "./choose-box";
import { VerdictBadge } from "./verdict-badge";
import styles from "./bead-card.module.css";

/**
 * One bead in the list: its picture, how it was run, what is on it and where it stands.
 */
export function BeadCard({
  bead,
  choose = false,
  order = Infinity,
}: {
  bead: BeadSummary;
  /** Whether it can be chosen for what is done with several. */
  choose?: boolean;
  /** From 0: pictures of the first are fetched at once, the very first before all others. */
  order?: number;
}) {
  return (
    <li className={styles.card}>
      <Link href={`/beads/${bead.id}`} className={styles.link}>
        <div className={styles.picture}>
          {bead.thumbSha256 ? (
            <img
              src={`/api/photos/${bead.thumbSha256}/thumb`}
              alt=""
              loading={order < 6 ? "eager" : "lazy"}
              {...(order === 0 ? { fetchPriority: "high" } : {})}
            />
          ) : (
            <span className={styles.noPicture}>No photo yet</span>
          )}
          <span className={styles.number}>{bead.number}</span>
        </div>
        <div className={styles.text}>
          <h2>{bead.title}</h2>
          {bead.setupLine !== "" && <p className={styles.setup}>{bead.setupLine}</p>}
          {bead.seen.length > 0 && <p className={styles.seen}>{bead.seen.join(" · ")}</p>}
          {bead.firstChange && (
            <p className={styles.change}>
              <span>Try next</span> {bead.firstChange}
            </p>
          )}
          {bead.again === "advice" && (
            <p className={styles.change}>What to try next is being weighed again.</p>
          )}
          <div className={styles.foot}>
            {bead.unreadable ? (
              <span className={styles.again}>Cannot be read: open it to see what to do</span>
            ) : bead.again === "all" ? (
              <span className={styles.again}>Being worked out again</span>
            ) : (
              <VerdictBadge verdict={bead.verdict} />
            )}
            <span>
              {bead.welder && `${bead.welder} · `}
              <LocalTime iso={bead.createdAt} only="day" />
            </span>
          </div>
        </div>
      </Link>
      {choose && (
        <span className={styles.choose}>
          <ChooseBox id={bead.id} number={bead.number} />
        </span>
      )}
    </li>
  );
}
