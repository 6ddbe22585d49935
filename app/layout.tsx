import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import "@fontsource/barlow/400.css";
import "@fontsource/barlow/500.css";
import "@fontsource/barlow/600.css";
import "@fontsource/barlow-condensed/600.css";
import "@fontsource/barlow-condensed/700.css";
import "./theme.css";

export const metadata: Metadata = {
  title: { default: "Toeline", template: "%s · Toeline" },
  description: "Read the chipped bead: sizes, likely causes, the one change to try, and the clause it meets.",
};

export const viewport: Viewport = { width: "device-width", initialScale: 1, themeColor: "#14171c" };

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  );
}
