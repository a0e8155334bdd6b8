import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { typedItem } from "#core/object-files/typed-item";
import { DescribeForm } from "#ui/objects/describe-form";
import { FileFrame } from "#ui/objects/file-frame";
import { stateOf, stateOfNew } from "#ui/objects/item-form";
import { ItemPhotographs } from "#ui/objects/item-photographs";
import { More } from "#ui/objects/more";
import { Overview } from "#ui/objects/overview";
import { PhotographForm } from "#ui/objects/photograph-form";
import { derivedOf, fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import styles from "../../../_ui/objects/objects.module.css";
import type { ObjectPageProps } from "../../../_ui/objects/page-props.ts";
import plain from "../../../_ui/plain.module.css";

export async function generateMetadata({ params }: ObjectPageProps): Promise<Metadata> {
  const { kept } = await fileForPage((await params).id, "");
  return { title: kept.content.title, robots: { index: kept.publishedAt !== null } };
}

/** The file of one object: what it is, how sure, why, what speaks against it, and who says so. */
export default async function ObjectPage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, { form, said }] = await Promise.all([params, searchParams]);
  const [{ kept, access, entries, isStranger }, t] = await Promise.all([
    fileForPage(id, ""),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(form);
  const { content } = kept;
  const mayChange = access !== "view";
  const photograph = stateOfNew(refused, "photograph", content.photographs, newItemId());
  const isRefused = refused?.typed.did === "describe";
  const describe = stateOf(
    refused,
    "describe",
    isRefused ? (refused?.typed.id ?? "") : id,
    typedItem(content),
  );
  return (
    <FileFrame {...{ kept, access, isStranger }} part="overview" said={said}>
      <div className={styles.two}>
        <div className={styles.section}>
          <ItemPhotographs
            kept={kept}
            photographs={content.photographs.filter(({ of }) => of === "whole")}
            alt={content.title}
            part="overview"
            mayChange={mayChange}
            isLead
          />
          {content.photographs.length === 0 && <p className={styles.mat}>{t("noPhotograph")}</p>}
          {mayChange && (
            <More
              words={t("overview.addPhotograph")}
              isOpen={photograph.given || content.photographs.length === 0}
            >
              <PhotographForm kept={kept} state={photograph} />
            </More>
          )}
        </div>
        <div className={styles.section}>
          <Overview kept={kept} {...derivedOf(content, entries)} base={`/objects/${id}`} />
          <p className={styles.buttons}>
            {mayChange && (
              <Link href={`/objects/${id}/examine#point`} className={plain.button}>
                {t("overview.begin")}
              </Link>
            )}
            <Link href={`/objects/${id}/report`} prefetch={false} className={plain.quiet}>
              {t("overview.report")}
            </Link>
          </p>
          {mayChange && (
            <More words={t("overview.describe")} isOpen={describe.given}>
              <DescribeForm kept={kept} state={describe} />
            </More>
          )}
        </div>
      </div>
    </FileFrame>
  );
}
