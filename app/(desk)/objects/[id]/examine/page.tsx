import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { Examination } from "#ui/objects/examination";
import { FileFrame } from "#ui/objects/file-frame";
import { ObservationList } from "#ui/objects/observation-list";
import { OwnObservations } from "#ui/objects/own-observations";
import { fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import { pointsOf } from "../../../../_ui/objects/exam-point.ts";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.examine"), robots: { index: false } };
}

/** The guided examination: from point to point of the family's checklist. */
export default async function ExaminePage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const [{ kept, access, isStranger }, t] = await Promise.all([
    fileForPage(id, "examine"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(query.form);
  const points = pointsOf(kept.content, newItemId);
  const asked = points.findIndex((each) => each.id === (refused?.typed.point ?? query.point));
  const open = points.findIndex(({ observed }) => observed === null);
  return (
    <FileFrame {...{ kept, access, isStranger }} part="examine" said={query.said}>
      {access === "view" ? (
        <ObservationList points={points} />
      ) : (
        <>
          <p>{t("examine.lede")}</p>
          <Examination
            file={id}
            version={kept.version}
            points={points}
            first={Math.max(0, asked >= 0 ? asked : open)}
            photographId={newItemId()}
            form={refused?.typed.point ? refused : null}
          />
        </>
      )}
      <OwnObservations kept={kept} mayChange={access !== "view"} refused={refused} newId={newItemId} />
    </FileFrame>
  );
}
