import Link from "next/link";
import { buttonClass, LocalTime } from "@/components/ui";
import styles from "./criteria.module.css";

export interface VersionShown {
  readonly key: string;
  readonly version: number;
  readonly createdAt: string;
  readonly content: { readonly author: string };
}

/** Every version of one set, newest first, each a page to read. `shown`: the one on this page. */
export function Versions({
  versions,
  shown,
}: {
  readonly versions: readonly VersionShown[];
  readonly shown: number | null;
}) {
  return (
    <ul className={styles.versions} aria-label="Versions">
      {versions
        .toSorted((a, b) => b.version - a.version)
        .map(({ key, version, createdAt, content }) => (
          <li key={version}>
            <Link
              href={`/criteria/${key}?version=${version}`}
              className={buttonClass()}
              aria-current={version === shown ? "page" : undefined}
            >
              Version {version}, <LocalTime iso={createdAt} only="day" />, {content.author}
            </Link>
          </li>
        ))}
    </ul>
  );
}
