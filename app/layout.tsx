import type { Metadata, Viewport } from "next";
import { cookies } from "next/headers";
import { NextIntlClientProvider } from "next-intl";
import { getMessages, getTranslations } from "next-intl/server";
import type { ReactNode } from "react";
import { SiteFooter } from "#ui/site-footer";
import { SiteHeader } from "#ui/site-header";
import { SkipLink } from "#ui/skip-link";
import { actor } from "#web/actor";
import { themeOf } from "./_ui/theme.ts";
import "./globals.css";

/**
 * Every page is made when it is asked for: each shows what the database holds and carries a nonce of its own, and the
 * build must not open the data folder of the host it builds for.
 */
export const dynamic = "force-dynamic";

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("site");
  return {
    title: { default: t("name"), template: `%s · ${t("name")}` },
    description: t("description"),
  };
}

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#fcfcfa" },
    { media: "(prefers-color-scheme: dark)", color: "#161a1b" },
  ],
};

/** What only the server words stays on the server: the browser gets the messages of its islands alone. */
async function islandMessages() {
  const {
    bench,
    several,
    known,
    kinds,
    techniques,
    rules,
    fields,
    viewer,
    compare,
    theme,
    failure,
    address,
    draftIsland,
    citationParts,
    photographParts,
    likeness,
    objectPages: { camera, choosePhotograph, photographNote, outbox, examine, measure },
    worksheet: { print },
  } = await getMessages();
  return {
    worksheet: { print },
    objectPages: { camera, choosePhotograph, photographNote, outbox, examine, measure },
    bench,
    several,
    known,
    kinds,
    techniques,
    rules,
    fields,
    viewer,
    compare,
    theme,
    failure,
    address,
    draftIsland,
    citationParts,
    photographParts,
    likeness,
  };
}

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const theme = themeOf((await cookies()).get("theme")?.value);
  return (
    <html lang="en-GB" {...(theme === "system" ? {} : { "data-theme": theme })} suppressHydrationWarning>
      <body>
        <NextIntlClientProvider messages={await islandMessages()}>
          <SkipLink />
          <SiteHeader who={await actor()} />
          <main id="content" tabIndex={-1}>
            {children}
          </main>
          <SiteFooter theme={theme} />
        </NextIntlClientProvider>
      </body>
    </html>
  );
}
