import { ArrowDown, ArrowUp, Trash2 } from "lucide-react";
import type { Metadata } from "next";
import Link from "next/link";
import { pageFor } from "@/app/_door/here";
import { ActionButton, ActionForm } from "@/components/course";
import { Header } from "@/components/shell";
import { Button, buttonClass, Field, form as formStyles, page, Panel } from "@/components/ui";
import { personIdOf } from "@/lib/people";
import { listPhrases } from "@/lib/classroom";
import { addPhraseAction, changePhraseAction, deletePhraseAction, movePhraseAction } from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Quick remarks" };

export default async function PhrasesPage() {
  const now = await pageFor("course.write");
  const own = personIdOf(now.actor);
  const phrases = await listPhrases(now.db, own);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <p className={page.trail}>
            <Link href="/feedback">Feedback</Link>
          </p>
          <h1>Quick remarks</h1>
          <p>
            Said with one press while you mark up. What was returned keeps the words it was returned with.
          </p>
        </div>
        <ul className={page.list}>
          {phrases.map(({ id, text, own: mine }, i) => (
            <li key={id} className={page.item}>
              <ActionForm
                key={text}
                action={changePhraseAction.bind(null, id)}
                className={page.fields}
                label={`Quick remark ${i + 1}`}
              >
                <Field label={`Remark ${i + 1}`} hint={mine ? "Yours alone." : undefined}>
                  {(ids) => <input {...ids} name="text" defaultValue={text} maxLength={300} required />}
                </Field>
                <Button type="submit">Save</Button>
              </ActionForm>
              <span className={page.buttons}>
                <ActionButton className={buttonClass()} action={movePhraseAction.bind(null, id, -1)}>
                  <ArrowUp aria-label={`Remark ${i + 1} up`} />
                </ActionButton>
                <ActionButton className={buttonClass()} action={movePhraseAction.bind(null, id, 1)}>
                  <ArrowDown aria-label={`Remark ${i + 1} down`} />
                </ActionButton>
                <ActionButton
                  className={buttonClass("danger")}
                  sure="Delete this remark?"
                  action={deletePhraseAction.bind(null, id)}
                >
                  <Trash2 aria-label={`Delete remark ${i + 1}`} />
                </ActionButton>
              </span>
            </li>
          ))}
        </ul>
        <Panel title="Another one" tone="straw">
          <ActionForm action={addPhraseAction} className={page.fields} label="New quick remark">
            <Field label="What you often say">
              {(ids) => (
                <input
                  {...ids}
                  name="text"
                  maxLength={300}
                  required
                  autoComplete="off"
                  placeholder="Fill the crater before you lift off."
                />
              )}
            </Field>
            {own !== null && (
              <label className={formStyles.check}>
                <input type="checkbox" name="own" value="yes" />
                Mine alone
              </label>
            )}
            <Button type="submit" tone="main">
              Add
            </Button>
          </ActionForm>
        </Panel>
      </main>
    </>
  );
}
