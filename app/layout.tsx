import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import "@fontsource/barlow/400.css";
import "@fontsource/barlow/500.css";
import "@fontsource/barlow/600.css";
import "@fontsource/barlow-condensed/600.css";
import "@fontsource/barlow-condensed/700.css";
import "./theme.css";
import { SendLeftWork, WhoProvider, WorkerHere } from "@/components/offline";
import { MenuProvider } from "@/components/shell";
import { actorRef } from "@/lib/people";
import { getPerson } from "@/lib/roster";
import { here } from "./_door/here";
import { menuFor } from "./_door/menu";
import { signOutAction } from "./sign-in/actions";

export const metadata: Metadata = {
  title: { default: "Toeline", template: "%s · Toeline" },
  description: "Read the chipped bead: sizes, likely causes, the one change to try, and the clause it meets.",
  icons: { icon: "/icons/192.png", apple: "/icons/180.png" },
};

export const viewport: Viewport = { width: "device-width", initialScale: 1, themeColor: "#14171c" };

export default async function RootLayout({ children }: { children: ReactNode }) {
  const { actor, db } = await here();
  const person = actor.kind === "person" ? await getPerson(db, actor.personId) : null;
  const signedIn = person ? { name: person.name ?? "", leave: signOutAction } : null;
  return (
    <html lang="en">
      <body>
        <WhoProvider by={actorRef(actor)}>
          <MenuProvider content={{ ...menuFor(actor), signedIn }}>{children}</MenuProvider>
          <SendLeftWork />
          <WorkerHere />
        </WhoProvider>
      </body>
    </html>
  );
}
