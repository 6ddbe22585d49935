import { Plus } from "lucide-react";
import Link from "next/link";
import { BeadCard, ExportBar, FilterPanel, PICK_FORM, SavedFilters } from "@/components/beads";
import { LeftHere } from "@/components/offline";
import { Header, UnitSwitch } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import type { ShopCriteria } from "@/lib/accept";
import { isDemoThere } from "@/lib/demo";
import { filterQuery, findBeads, listSavedFilters, readFilter } from "@/lib/find";
import { assessContext } from "@/lib/shop";
import { summariseBead } from "@/lib/report";
import { chooseUnitsAction } from "./beads/actions";
import { deleteFilterAction, saveFilterAction } from "./exports/actions";
import { asParams, askedFor, filterQuestions, hiddenParts } from "./filter-questions";
import { currentUnits } from "./_door/current-units";
import { ownOnly, pageFor, type Here } from "./_door/here";
import styles from "./page.module.css";

export const dynamic = "force-dynamic";

/** Cards on one page: each has its causes worked out anew. */
const ON_A_PAGE = 48;

interface Search {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function BeadsPage({ searchParams }: Search) {
  const now = await pageFor("bead.read");
  const params = asParams(await searchParams);
  const read = readFilter(params);
  const [units, context] = await Promise.all([currentUnits(), assessContext(now.db)]);
  const beads = await findBeads(now.db, read.filter, ownOnly(now.actor), context);
  const { found, all } = beads;
  const query = filterQuery(read.filter);
  const pages = Math.max(1, Math.ceil(found.length / ON_A_PAGE));
  const at = Math.min(pages, Math.max(1, Math.floor(Number(params.get("page"))) || 1));
  const shown = found.slice((at - 1) * ON_A_PAGE, at * ON_A_PAGE);
  return (
    <>
      <Header>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={`${page.wide} ${styles.main}`}>
        <div className={`${page.top} ${styles.top}`}>
          <div>
            <h1>Beads</h1>
            <p role="status">{countLine(found.length, all.length, query !== "")}</p>
            <DemoOffer now={now} />
          </div>
          {now.may("bead.create") && (
            <Link className={buttonClass("main", "large")} href="/beads/new">
              <Plus aria-hidden="true" size={26} /> New bead
            </Link>
          )}
        </div>
        <LeftHere />
        {all.length > 0 && <Finding {...{ now, read, beads }} shopSets={context.shopSets} />}
        {found.length === 0 ? (
          <p className={page.sum}>
            {all.length === 0
              ? "Run a bead, chip the slag, and press New bead to photograph it."
              : "No bead fits all of this. Take a filter off."}
          </p>
        ) : (
          <ul className={styles.list}>
            {shown.map(({ assessed }) => (
              <BeadCard
                key={assessed.id}
                bead={summariseBead(assessed, units.preferences)}
                pickForm={now.may("data.export") ? PICK_FORM : null}
              />
            ))}
          </ul>
        )}
        {pages > 1 && <Pages at={at} pages={pages} query={query} />}
        {now.may("bead.delete") && (
          <p>
            <Link href="/beads/deleted">Deleted beads</Link>
          </p>
        )}
      </main>
    </>
  );
}

/** Offered as long as there is something of it. */
async function DemoOffer({ now }: { now: Here }) {
  if (!now.may("people.manage") || !(await isDemoThere(now.db))) return null;
  return (
    <p>
      This is a demo shop, invented to look around in. <Link href="/demo">Clear it and begin empty</Link>
    </p>
  );
}

/** Words and filters, what of them is kept for another day, and the way out with what they found. */
async function Finding({
  now,
  read: { filter, unread },
  beads: { found, all },
  shopSets,
}: {
  now: Here;
  read: ReturnType<typeof readFilter>;
  beads: Awaited<ReturnType<typeof findBeads>>;
  shopSets: readonly ShopCriteria[];
}) {
  const saved = await listSavedFilters(now.db);
  const query = filterQuery(filter);
  const mayKeep = now.may("settings.write");
  return (
    <div className={styles.find}>
      <FilterPanel
        // A form keeps what was typed into it; another address is another form.
        key={query}
        action="/"
        words={filter.q ?? ""}
        questions={filterQuestions(filter, all, { sort: true, shopSets })}
        asked={askedFor(filter, "/", "", shopSets)}
        hidden={hiddenParts({ id: filter.id, job: filter.job })}
      />
      {unread.length > 0 && (
        <p className={styles.unread} role="alert">
          This address asks for something that could not be read ({unread.join(", ")}); it was left out.
        </p>
      )}
      <SavedFilters
        saved={saved.map(({ id, name, filter }) => ({ id, name, href: `/?${filterQuery(filter)}` }))}
        onSave={mayKeep && query !== "" ? saveFilterAction.bind(null, query) : null}
        onDelete={mayKeep ? deleteFilterAction : null}
      />
      {now.may("data.export") && found.length > 0 && (
        <ExportBar count={found.length} hidden={hiddenParts(filter)} />
      )}
    </div>
  );
}

function countLine(found: number, all: number, asked: boolean): string {
  if (all === 0) return "Nothing recorded yet.";
  return asked ? `${found} of ${all} fit.` : `${all} recorded, newest first.`;
}

function Pages({ at, pages, query }: { at: number; pages: number; query: string }) {
  const href = (to: number): string => `/?${[query, `page=${to}`].filter(Boolean).join("&")}`;
  return (
    <nav className={styles.pages} aria-label="Pages of the list">
      {at > 1 && (
        <Link className={buttonClass()} href={href(at - 1)}>
          Page before
        </Link>
      )}
      <span>
        Page {at} of {pages}
      </span>
      {at < pages && (
        <Link className={buttonClass()} href={href(at + 1)}>
          Next page
        </Link>
      )}
    </nav>
  );
}
