import type { Metadata } from "next";
import { Header } from "@/components/shell";
import { Field, page, SaidForm } from "@/components/ui";
import { chooseByCodeAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Choose your passphrase" };

/** For whoever was given a one-time code: they are nobody yet, and the code is what is asked for. */
export default function PassphrasePage() {
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Choose your passphrase</h1>
        <p>
          Whoever opened your account gave you a one-time code. Choose a passphrase with it that nobody else
          knows, not the owner either: an inspector signs with it.
        </p>
        <SaidForm action={chooseByCodeAction} submit="Choose the passphrase">
          <Field label="One-time code">
            {(ids) => <input {...ids} name="code" autoComplete="off" autoCapitalize="characters" required />}
          </Field>
          <Field label="Your new passphrase" hint="At least 10 characters.">
            {(ids) => (
              <input {...ids} name="passphrase" type="password" autoComplete="new-password" required />
            )}
          </Field>
        </SaidForm>
        <p className={page.note}>
          An inspector’s signing key is made with it. Where you had one before, that one ends, and records say
          that another began by code.
        </p>
      </main>
    </>
  );
}
