import { Plus } from "lucide-react";
import Link from "next/link";
import { BeadCard, ExportBar, FilterPanel, PICK_FORM, SavedFilters } from "@/components/beads";
import { Header, UnitSwitch } from "@/components/shell";
import { buttonClass } from "@/components/ui";
import { assessContext, filterQuery, findBeads, listSavedFilters, readFilter } from "@/lib/record";
import { summariseBead } from "@/lib/report";
import { chooseUnitsAction, startBead } from "./beads/actions";
import { deleteFilterAction, saveFilterAction } from "./exports/actions";
import { asParams, askedFor, filterQuestions, hiddenParts } from "./filter-questions";
import { currentUnits } from "./_door/current-units";
import { ownOnly, pageFor } from "./_door/here";
import styles from "./page.module.css";

export const dynamic = "force-dynamic";

/** Cards on one page: each has its causes worked out anew. */
const ON_A_PAGE = 48;

export default async function BeadsPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const now = await pageFor("bead.read");
  const params = asParams(await searchParams);
  const { filter, unread } = readFilter(params);
  const [units, context, saved] = await Promise.all([
    currentUnits(),
    assessContext(now.db),
    listSavedFilters(now.db),
  ]);
  const { found, all } = await findBeads(now.db, filter, ownOnly(now.actor), context);
  const query = filterQuery(filter);
  const pages = Math.max(1, Math.ceil(found.length / ON_A_PAGE));
  const page = Math.min(pages, Math.max(1, Math.floor(Number(params.get("page"))) || 1));
  const shown = found.slice((page - 1) * ON_A_PAGE, page * ON_A_PAGE);
  const mayKeep = now.may("settings.write");
  const mayExport = now.may("data.export");
  return (
    <>
      <Header>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={styles.main}>
        <div className={styles.top}>
          <div>
            <h1>Beads</h1>
            <p role="status">{countLine(found.length, all.length, query !== "")}</p>
          </div>
          <form action={startBead}>
            <button className={buttonClass("main", "large")} type="submit">
              <Plus aria-hidden="true" size={26} /> New bead
            </button>
          </form>
        </div>
        {all.length > 0 && (
          <div className={styles.find}>
            <FilterPanel
              // A form keeps what was typed into it; another address is another form.
              key={query}
              action="/"
              words={filter.q ?? ""}
              questions={filterQuestions(filter, all, { sort: true, shopSets: context.shopSets })}
              asked={askedFor(filter, "/", "", context.shopSets)}
              hidden={hiddenParts({ id: filter.id, job: filter.job })}
            />
            {unread.length > 0 && (
              <p className={styles.unread} role="alert">
                This address asks for something that could not be read ({unread.join(", ")}); it was left out.
              </p>
            )}
            <SavedFilters
              saved={saved.map((one) => ({
                id: one.id,
                name: one.name,
                href: `/?${filterQuery(one.filter)}`,
              }))}
              onSave={mayKeep && query !== "" ? saveFilterAction.bind(null, query) : null}
              onDelete={mayKeep ? deleteFilterAction : null}
            />
            {mayExport && found.length > 0 && <ExportBar count={found.length} hidden={hiddenParts(filter)} />}
          </div>
        )}
        {found.length === 0 ? (
          <p className={styles.empty}>
            {all.length === 0
              ? "Run a bead, chip the slag, and press New bead to photograph it."
              : "No bead fits all of this. Take a filter off."}
          </p>
        ) : (
          <ul className={styles.list}>
            {shown.map(({ bead }) => (
              <BeadCard
                key={bead.id}
                bead={summariseBead(bead, units.preferences, context)}
                pickForm={mayExport ? PICK_FORM : null}
              />
            ))}
          </ul>
        )}
        {pages > 1 && <Pages page={page} pages={pages} query={query} />}
      </main>
    </>
  );
}

function countLine(found: number, all: number, asked: boolean): string {
  if (all === 0) return "Nothing recorded yet.";
  return asked ? `${found} of ${all} fit.` : `${all} recorded, newest first.`;
}

function Pages({ page, pages, query }: { page: number; pages: number; query: string }) {
  const href = (to: number): string => `/?${[query, `page=${to}`].filter(Boolean).join("&")}`;
  return (
    <nav className={styles.pages} aria-label="Pages of the list">
      {page > 1 && (
        <Link className={buttonClass()} href={href(page - 1)}>
          Page before
        </Link>
      )}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Link className={buttonClass()} href={href(page + 1)}>
          Next page
        </Link>
      )}
    </nav>
  );
}
