import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { DocumentForm } from "#ui/objects/document-form";
import { DocumentList } from "#ui/objects/document-list";
import { EventForm } from "#ui/objects/event-form";
import { EventList } from "#ui/objects/event-list";
import { FileFrame } from "#ui/objects/file-frame";
import { stateOfNew } from "#ui/objects/item-form";
import { More } from "#ui/objects/more";
import { ProvenanceRemarks } from "#ui/objects/provenance-remarks";
import { ProvenanceTime } from "#ui/objects/provenance-time";
import { derivedOf, fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.provenance"), robots: { index: false } };
}

/** The chain of what happened to the object, against the time in which it was probably made. */
export default async function ProvenancePage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, { form, said }] = await Promise.all([params, searchParams]);
  const [{ kept, access, entries, isStranger }, t] = await Promise.all([
    fileForPage(id, "provenance"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(form);
  const { content } = kept;
  const { estimate, check } = derivedOf(content, entries);
  const mayChange = access !== "view";
  const event = stateOfNew(refused, "event", content.events, newItemId());
  const document = stateOfNew(refused, "document", content.documents, newItemId());
  return (
    <FileFrame {...{ kept, access, isStranger }} part="provenance" said={said}>
      <ProvenanceTime content={content} estimate={estimate} />
      <ProvenanceRemarks check={check} />
      <section aria-labelledby="steps">
        <h2 id="steps">{t("chain.steps")}</h2>
        <EventList {...{ kept, check, refused, mayChange }} />
        {mayChange && (
          <More words={t("chain.add")} isOpen={event.given || content.events.length === 0}>
            <EventForm kept={kept} state={event} isThere={false} />
          </More>
        )}
      </section>
      <section aria-labelledby="documents">
        <h2 id="documents">{t("chain.documents")}</h2>
        {content.documents.length === 0 && <p>{t("chain.noDocuments")}</p>}
        <DocumentList {...{ kept, refused, mayChange }} newId={newItemId} />
        {mayChange && (
          <More words={t("chain.addDocument")} isOpen={document.given}>
            <DocumentForm kept={kept} state={document} isThere={false} photographId={newItemId()} />
          </More>
        )}
      </section>
    </FileFrame>
  );
}
