import Link from "next/link";
import { buttonClass, page } from "@/components/ui";
import type { Actor } from "@/lib/people";
import { desksFor } from "./_door/menu";

/** The ways to the desks of somebody who does more than one job here; nothing for everybody else. */
export function Desks({ actor }: { actor: Actor }) {
  const desks = desksFor(actor);
  if (desks.length === 0) return null;
  return (
    <nav className={page.buttons} aria-label="Your desks">
      {desks.map(({ href, name }) => (
        <Link key={href} className={buttonClass()} href={href}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
