import Link from "next/link";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import styles from "./atlas-links.module.css";

/** More kinds than this are a chapter, and the chapter is the atlas. */
const MOST = 3;

/** The ways to the pages of some imperfections. */
export function AtlasLinks({ ids }: { ids: readonly ImperfectionId[] }) {
  if (ids.length === 0) return null;
  return (
    <span className={styles.links}>
      {ids.length > MOST ? (
        <Link href="/atlas" prefetch={false}>
          In the atlas
        </Link>
      ) : (
        ids.map((id) => (
          <Link key={id} href={`/atlas/${id}`} prefetch={false}>
            {imperfections[id].name} in the atlas
          </Link>
        ))
      )}
    </span>
  );
}
