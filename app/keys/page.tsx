import type { Metadata } from "next";
import Link from "next/link";
import { Header } from "@/components/shell";
import { Field, page, Panel, SaidForm } from "@/components/ui";
import { listKeys } from "@/lib/keys";
import { personNames } from "@/lib/roster";
import { fingerprint, keyReason, type KnownKey } from "@/lib/signature";
import { pageFor } from "../_door/here";
import { confirmKeyAction } from "./actions";
import { PaperPanel } from "./paper-panel";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Keys" };

export default async function KeysPage() {
  const now = await pageFor("log.read");
  const [keys, names] = [await listKeys(now.db), await personNames(now.db)];
  const confirms = now.may("people.manage");
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Keys</h1>
        <p>
          Every record is signed by its inspector’s key, the log by this installation’s. Inspectors: note your
          fingerprint, and give it to whoever relies on your records.
        </p>
        <p>
          <Link href="/log">The log</Link> · <Link href="/check">Verify an archive</Link>
        </p>
        <PaperPanel db={now.db} manages={confirms} />
        {keys.length === 0 && <p className={page.note}>No key yet: the first is made when it is needed.</p>}
        {keys.map((key) => (
          <Panel key={key.id} title={holderText(key, names)} tone={toneOf(key)}>
            <p className={page.mono}>{fingerprint(key.id)}</p>
            <p>{lifeText(key)}</p>
            {key.origin === "archive" && <p>{confirmedText(key)}</p>}
            {key.origin === "archive" && confirms && (
              <SaidForm
                action={confirmKeyAction.bind(null, key.id)}
                submit="Confirm whose it is"
                tone="plain"
              >
                <Field
                  label="Fingerprint, as its holder told you"
                  hint="Not copied from above: by telephone, or from their own paper."
                >
                  {(ids) => <input {...ids} name="told" autoComplete="off" autoCapitalize="none" required />}
                </Field>
                <Field label="Whose key it is">
                  {(ids) => <input {...ids} name="whose" maxLength={120} autoComplete="off" required />}
                </Field>
              </SaidForm>
            )}
          </Panel>
        ))}
      </main>
    </>
  );
}

function holderText({ origin, holder, personId }: KnownKey, names: ReadonlyMap<string, string>): string {
  if (origin === "archive") return "Key of another installation";
  if (holder === "installation") return "This installation";
  return names.get(personId ?? "") ?? "A removed person";
}

const toneOf = ({ origin, until }: KnownKey) =>
  until !== null ? "plain" : origin === "archive" ? "straw" : "blue";

function lifeText({ algorithm, from, reason, until, untilReason }: KnownKey): string {
  const begun = `${algorithm}, since ${from.slice(0, 10)}, ${keyReason(reason)}`;
  return until === null
    ? `${begun}.`
    : `${begun}; until ${until.slice(0, 10)}, ${keyReason(untilReason ?? "")}.`;
}

const confirmedText = ({ confirmed }: KnownKey): string =>
  confirmed
    ? `Compared on ${confirmed.at.slice(0, 10)}: ${confirmed.whose}.`
    : "Nobody here has confirmed whose it is.";
