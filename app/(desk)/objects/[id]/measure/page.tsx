import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { sizesOf } from "#core/object-files/sizes";
import { typedItem } from "#core/object-files/typed-item";
import { FileFrame } from "#ui/objects/file-frame";
import { stateOf, stateOfNew } from "#ui/objects/item-form";
import { LineForm } from "#ui/objects/line-form";
import { MeasurementForm } from "#ui/objects/measurement-form";
import { MeasurementList } from "#ui/objects/measurement-list";
import { More } from "#ui/objects/more";
import { ScreenMeasure } from "#ui/objects/screen-measure";
import { SizeMatch } from "#ui/objects/size-match";
import { fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.measure"), robots: { index: false } };
}

/** The measures, with a rule or on a photograph, against the sizes of a catalogued line. */
export default async function MeasurePage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, { form, said, on }] = await Promise.all([params, searchParams]);
  const [{ kept, access, isStranger }, t] = await Promise.all([
    fileForPage(id, "measure"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(form);
  const { measurements, photographs, line } = kept.content;
  const mayChange = access !== "view";
  const fresh = stateOfNew(refused, "measurement", measurements, newItemId());
  const onScreen = stateOfNew(refused, "measure-on-screen", measurements, newItemId());
  const chosen =
    (typeof on === "string" ? on : undefined) ?? (onScreen.given ? onScreen.typed.photograph : undefined);
  const lineState = stateOf(
    refused,
    "line",
    refused?.typed.did === "line" ? (refused.typed.id ?? "") : newItemId(),
    typedLine(line),
  );
  return (
    <FileFrame {...{ kept, access, isStranger }} part="measure" said={said}>
      <section aria-labelledby="sizes">
        <h2 id="sizes">{t("measure.sizes")}</h2>
        <SizeMatch line={line} family={kept.content.family} sizes={sizesOf(kept.content)} />
      </section>
      <MeasurementList kept={kept} refused={refused} mayChange={mayChange} />
      {mayChange && (
        <>
          <section aria-labelledby="rule">
            <h2 id="rule">{t("measure.rule")}</h2>
            <MeasurementForm kept={kept} state={fresh} isThere={false} />
          </section>
          <section aria-labelledby="on-screen">
            <h2 id="on-screen">{t("measure.onScreen")}</h2>
            <ScreenMeasure
              kept={kept}
              state={onScreen}
              photograph={photographs.find((each) => each.id === chosen) ?? null}
            />
          </section>
          <section aria-labelledby="line">
            <h2 id="line">{t("measure.line")}</h2>
            <p>{t("measure.lineNote")}</p>
            <More words={t(line ? "change" : "add")} isOpen={lineState.given || line === null}>
              <LineForm kept={kept} state={lineState} />
            </More>
          </section>
        </>
      )}
    </FileFrame>
  );
}

function typedLine(line: Awaited<ReturnType<typeof fileForPage>>["kept"]["content"]["line"]) {
  if (!line) return {};
  const sizes = line.sizes.map(({ name }) => name.replace(/ (cm|mm|in)$/, "")).join("; ");
  const unit = / (cm|mm|in)$/.exec(line.sizes[0]?.name ?? "")?.[1] ?? "cm";
  return { ...typedItem(line), when: line.made ?? "", sizes, unit, catalogue: line.convention ?? "" };
}
