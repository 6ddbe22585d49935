import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { ForgetPages } from "@/components/offline";
import { Header } from "@/components/shell";
import { Field, page, SaidForm } from "@/components/ui";
import { here } from "../_door/here";
import { signInAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage() {
  const { actor } = await here();
  if (actor.kind !== "nobody") redirect("/");
  return (
    <>
      <Header />
      <ForgetPages />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Sign in</h1>
        <SaidForm action={signInAction} submit="Sign in">
          <Field label="Sign-in name">
            {(ids) => (
              <input {...ids} name="signInName" autoComplete="username" autoCapitalize="none" required />
            )}
          </Field>
          <Field label="Passphrase">
            {(ids) => (
              <input {...ids} name="passphrase" type="password" autoComplete="current-password" required />
            )}
          </Field>
          <Field label="Number from your phone, if your account asks for one" hint="Or a recovery code">
            {(ids) => <input {...ids} name="number" autoComplete="one-time-code" maxLength={40} />}
          </Field>
        </SaidForm>
        <p>
          <Link href="/passphrase">I have a code: choose my passphrase</Link>
        </p>
        <p>
          <Link href="/check">Verify an archive without an account</Link>
        </p>
        <p className={page.note}>
          No account? The owner of this Toeline, or your instructor, opens one. To hand in a bead, open the
          address on the bench instead.
        </p>
      </main>
    </>
  );
}
