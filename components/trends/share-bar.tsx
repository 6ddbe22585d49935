import styles from "./trends.module.css";

/** A share from 0 to 1 as a mark within its 95 % interval; the words beside it say the same. */
export function ShareBar({ value, low, high }: { value: number | null; low: number; high: number }) {
  if (value === null) return null;
  const x = (share: number): number => 8 + share * 144;
  return (
    <svg viewBox="0 0 160 24" className={styles.shareBar} aria-hidden="true">
      <path d="M8 12 H152" stroke="var(--line)" strokeWidth="2" />
      <path d={`M${x(low)} 12 H${x(high)}`} stroke="var(--bronze)" strokeWidth="8" />
      <circle cx={x(value)} cy="12" r="6" fill="var(--ink)" stroke="var(--panel)" strokeWidth="2" />
    </svg>
  );
}
