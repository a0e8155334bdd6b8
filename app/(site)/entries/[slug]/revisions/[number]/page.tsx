import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { revisionState } from "#core/review/standing";
import { EntryBody } from "#ui/entry/entry-body";
import { RevisionBanner } from "#ui/revisions/revision-banner";
import { Said } from "#ui/said";
import { showRevision } from "#web/drafts/reading-drafts";
import { addressOfHost } from "#web/origin";
import { showHistory } from "#web/reading-reviews";

type Props = {
  readonly params: Promise<{ readonly slug: string; readonly number: string }>;
  readonly searchParams: Promise<{ readonly said?: string }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { slug, number } = await params;
  const [revision, t] = await Promise.all([showRevision(slug, number), getTranslations("revisions")]);
  if (!revision) return {};
  return { title: `${revision.view.content.title}, ${t("number", { number: revision.line.number })}` };
}

/** Any revision of an entry, as the entry's page would show it, at an address that never changes. */
export default async function RevisionPage({ params, searchParams }: Props) {
  const [{ slug, number }, { said }, t] = await Promise.all([
    params,
    searchParams,
    getTranslations("contribute"),
  ]);
  const traced = await showHistory(slug);
  const revision = await showRevision(slug, number);
  if (!traced || !revision) notFound();
  const state = revisionState(traced.history, revision.line.id);
  const view = { ...revision.view, summary: { ...revision.view.summary, state } };
  return (
    <>
      {said === "submitted" && <Said>{t("said.submitted")}</Said>}
      <RevisionBanner revision={revision} slug={slug} state={state} origin={await addressOfHost()} />
      <EntryBody view={view} />
    </>
  );
}
