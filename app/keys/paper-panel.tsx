import { Field, page, Panel, SaidForm } from "@/components/ui";
import type { Db } from "@/lib/db";
import { paperCertificates, paperSigning, type PaperCertificate, type PaperSigning } from "@/lib/keys";
import { endCertificateAction, makeCertificateAction, uploadCertificateAction } from "./actions";

/** The certificate that papers are signed with: whose it is, what its signature says, and the owner's forms. */
export async function PaperPanel({ db, manages }: { db: Db; manages: boolean }) {
  const [signing, all] = [await paperSigning(db, new Date()), await paperCertificates(db)];
  const used = signing.kind === "none" ? null : signing.certificate;
  const before = all.filter(({ endedAt }) => endedAt !== null);
  return (
    <Panel title="Digital signature in PDFs" tone={signing.kind === "ready" ? "blue" : "plain"}>
      <p>{stateText(signing)}</p>
      {used && <CertificateLines certificate={used} />}
      <p>
        It says that this installation issued that file and that no byte of it was changed since. It does not
        say that the weld is good, or who inspected it: that is the inspector’s own signature, named on the
        first page. Its time is this machine’s clock when the file was made; no other clock witnesses it. Each
        download is signed anew, and its pages are the same.
      </p>
      {manages && <OwnersForms isUsed={used !== null} />}
      {before.length > 0 && (
        <details>
          <summary>Out of use: {before.length}</summary>
          {before.map((one) => (
            <CertificateLines key={one.fingerprint + one.since} certificate={one} />
          ))}
        </details>
      )}
    </Panel>
  );
}

function stateText(signing: PaperSigning): string {
  switch (signing.kind) {
    case "none":
      return "None is set up: PDFs of signed records carry the digest alone.";
    case "over":
      return "The certificate is not valid today, so PDFs leave without a signature. Set up another one.";
    case "closed":
      return "The private key does not open with the key of this data folder, so PDFs leave without a signature. Set it up anew.";
    case "ready":
      return "PDFs of signed records leave with a digital signature. Drafts, and what could not be verified, leave without.";
  }
}

function CertificateLines({ certificate }: { certificate: PaperCertificate }) {
  const { name, issuer, isSelfSigned, from, until, since, endedAt } = certificate;
  const issued = isSelfSigned
    ? "signed by itself: nobody else vouches for it, so give its fingerprint by telephone or on paper"
    : `issued by ${issuer}`;
  const used = `in use since ${since.slice(0, 10)}${endedAt ? ` until ${endedAt.slice(0, 10)}` : ""} (UTC)`;
  return (
    <>
      <p>
        <strong>{name}</strong>, {issued}; valid {from.slice(0, 10)} to {until.slice(0, 10)}; {used}.
      </p>
      <p className={page.mono}>SHA-256 {inFours(certificate.fingerprint)}</p>
      <p>
        <a
          download="toeline-certificate.cer"
          href={`data:application/x-x509-user-cert;base64,${certificate.der}`}
        >
          Download the certificate
        </a>{" "}
        (for whoever wants their reader to trust it; the key stays here)
      </p>
    </>
  );
}

/** The whole of it, as readers of PDF show it, to be compared. */
const inFours = (hex: string): string => (hex.match(/.{4}/g) ?? []).join(" ");

function OwnersForms({ isUsed }: { isUsed: boolean }) {
  return (
    <>
      <details open={!isUsed}>
        <summary>{isUsed ? "Another one in its place" : "Set one up"}</summary>
        <SaidForm action={uploadCertificateAction} submit="Use this file" tone="plain">
          <Field label="Certificate with its key" hint="PKCS #12: .p12 or .pfx, as an issuer gives it">
            {(ids) => (
              <input {...ids} name="file" type="file" accept=".p12,.pfx,application/x-pkcs12" required />
            )}
          </Field>
          <Field label="Passphrase of the file" hint="Opens it once. It is not kept.">
            {(ids) => <input {...ids} name="passphrase" type="password" autoComplete="off" />}
          </Field>
        </SaidForm>
        <SaidForm action={makeCertificateAction} submit="Make one here" tone="plain">
          <Field
            label="Or made here: issued to"
            hint="The firm, not a person: it stands in every PDF. Signed by itself, so readers call it unknown until they trust it."
          >
            {(ids) => <input {...ids} name="name" minLength={2} maxLength={64} autoComplete="off" required />}
          </Field>
        </SaidForm>
      </details>
      {isUsed && <SaidForm action={endCertificateAction} submit="Put it out of use" tone="plain" />}
    </>
  );
}
