import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { AccessStory } from "#ui/objects/access-story";
import { FileFrame } from "#ui/objects/file-frame";
import { Invitations } from "#ui/objects/invitations";
import { PublishPart } from "#ui/objects/publish-part";
import { ShareLink } from "#ui/objects/share-link";
import { fileForPage, historyOfFile, keptForm } from "#web/object-files/reading";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.share"), robots: { index: false } };
}

/** Who may see the file; for its owner alone. */
export default async function SharePage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, { form, said, link }] = await Promise.all([params, searchParams]);
  const { kept, access, isStranger } = await fileForPage(id, "share");
  if (access !== "owner") notFound();
  const refused = keptForm(form) ?? { typed: {}, errors: [] };
  const address = keptForm(link)?.typed.address ?? null;
  const { accesses } = await historyOfFile(id);
  return (
    <FileFrame {...{ kept, access, isStranger }} part="share" said={said} form={refused} shown={["invited"]}>
      {address && <ShareLink kept={kept} address={address} />}
      <Invitations kept={kept} form={refused} />
      {!address && <ShareLink kept={kept} address={null} />}
      <PublishPart kept={kept} />
      <AccessStory accesses={accesses} />
    </FileFrame>
  );
}
