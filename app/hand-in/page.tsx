import type { Metadata } from "next";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { tooMany } from "@/lib/account";
import { Header } from "@/components/shell";
import { Button, Field, page } from "@/components/ui";
import { exerciseByCode } from "@/lib/classroom";
import { recordSentence } from "@/lib/store";
import { here } from "../_door/here";
import { countWrongCode, waitForCode } from "./code-tries";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Hand in" };

/** For whoever cannot photograph the code: typed, it leads to the same place. Open to everybody. */
export default async function HandInDoor({ searchParams }: { searchParams: Promise<{ code?: string }> }) {
  const { code } = await searchParams;
  const { db } = await here();
  const asking = await headers();
  const seconds = code ? await waitForCode(db, asking) : 0;
  const exercise = code && seconds === 0 ? await exerciseByCode(db, code) : null;
  if (exercise) redirect(`/hand-in/${exercise.code}`);
  if (code && seconds === 0) await countWrongCode(db, asking);
  const unknown = !code
    ? null
    : seconds > 0
      ? tooMany("too-many-codes", seconds).message
      : recordSentence({ code: "hand-in-code-unknown", path: [], data: {} });
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.column}`}>
        <h1>Hand in a bead</h1>
        <form className={page.stack} action="/hand-in">
          <Field label="Code on the bench" hint="Six letters and digits." error={unknown}>
            {(ids) => (
              <input
                {...ids}
                name="code"
                defaultValue={code ?? ""}
                required
                maxLength={20}
                autoComplete="off"
                autoCapitalize="characters"
              />
            )}
          </Field>
          <Button type="submit" tone="main" size="large">
            Go on
          </Button>
        </form>
      </main>
    </>
  );
}
