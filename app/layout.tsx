import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import "@fontsource/barlow/400.css";
import "@fontsource/barlow/600.css";
import "@fontsource/barlow-condensed/700.css";
import "./near-faces.css";
import "./theme.css";
import { SendLeftWork, WhoProvider, WorkerHere } from "@/components/offline";
import { LookHere, lookScript, MenuProvider, NoticeHere } from "@/components/shell";
import { askedOnceScript, EarlyHere, earlyScript } from "@/components/ui";
import { actorRef, reach } from "@/lib/people";
import { getPerson } from "@/lib/roster";
import { headers } from "next/headers";
import { here } from "./_door/here";
import { menuFor } from "./_door/menu";
import { signOutAction } from "./sign-in/actions";

export const metadata: Metadata = {
  title: { default: "Toeline", template: "%s · Toeline" },
  description: "Read the chipped bead: sizes, likely causes, the one change to try, and the clause it meets.",
  icons: { icon: "/icons/192.png", apple: "/icons/180.png" },
};

/**
 * Before any other script of a page. What makes a style sheet while a dialog is open, so that the page behind it holds still,
 * gets the nonce of this document; Zod does not try whether it may compile, which the policy would refuse and report; the
 * look is set before anything is painted, and an offer that was answered out of sight; and what somebody does before the page's
 * code is here is kept for it.
 */
const beforeAll =
  "globalThis.__webpack_nonce__=document.currentScript.nonce;globalThis.__zod_globalConfig={jitless:true};" +
  `${lookScript};${askedOnceScript};${earlyScript}`;

export const viewport: Viewport = { width: "device-width", initialScale: 1, themeColor: "#14171c" };

export default async function RootLayout({ children }: { children: ReactNode }) {
  const { actor, db } = await here();
  const person = actor.kind === "person" ? await getPerson(db, actor.personId) : null;
  const signedIn = person ? { name: person.name ?? "", leave: signOutAction } : null;
  const nonce = (await headers()).get("x-nonce") ?? "";
  return (
    <html lang="en" suppressHydrationWarning>
      <head>
        <script nonce={nonce} suppressHydrationWarning dangerouslySetInnerHTML={{ __html: beforeAll }} />
      </head>
      <body>
        <WhoProvider by={actorRef(actor)}>
          <MenuProvider content={{ ...menuFor(actor), signedIn }}>{children}</MenuProvider>
          <SendLeftWork />
          <WorkerHere />
          <LookHere />
          {person && reach(actor, "feedback.read") !== null && <NoticeHere personId={person.id} />}
          <EarlyHere />
        </WhoProvider>
      </body>
    </html>
  );
}
