import Link from "next/link";
import { Header } from "@/components/shell";
import { buttonClass } from "@/components/ui";

export default function NotFound() {
  return (
    <>
      <Header />
      <main
        style={{ padding: "var(--space-5)", display: "grid", gap: "var(--space-4)", justifyItems: "start" }}
      >
        <h1>Nothing here</h1>
        <p>What stood here was deleted, or the address is wrong.</p>
        <Link href="/" className={buttonClass("main", "large")}>
          All beads
        </Link>
      </main>
    </>
  );
}
