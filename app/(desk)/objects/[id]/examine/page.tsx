import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { checklistOf } from "#core/object-files/checklist";
import type { ObjectFile } from "#core/object-files/object-file";
import { Examination } from "#ui/objects/examination";
import { FileFrame } from "#ui/objects/file-frame";
import { ObservationList } from "#ui/objects/observation-list";
import { fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import type { ExamPoint } from "../../../../_ui/objects/exam-point.ts";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.examine"), robots: { index: false } };
}

/** The guided examination: from point to point of the family's checklist. */
export default async function ExaminePage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const [{ kept, access }, t] = await Promise.all([
    fileForPage(id, "examine"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(query.form);
  const points = pointsOf(kept.content);
  const asked = points.findIndex((each) => each.id === (refused?.typed.point ?? query.point));
  const open = points.findIndex(({ observed }) => observed === null);
  return (
    <FileFrame kept={kept} access={access} part="examine" said={query.said}>
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
            form={refused}
          />
        </>
      )}
    </FileFrame>
  );
}

function pointsOf({ family, observations, photographs }: ObjectFile): readonly ExamPoint[] {
  return checklistOf(family).points.map(({ id, lookFor, why, source, options }) => {
    const noted = observations.find(({ point }) => point === id);
    return {
      id,
      lookFor,
      why,
      source,
      options: options.map((each) => ({ id: each.id, says: each.says })),
      item: noted?.id ?? newItemId(),
      observed: noted?.observed ?? null,
      option: noted?.option ?? "",
      value: noted?.value ?? "",
      note: noted?.note ?? "",
      photographs: photographs
        .filter((each) => each.of === "point" && each.item === id)
        .map(({ sha256, width, height }) => ({ sha256, width, height })),
    };
  });
}
