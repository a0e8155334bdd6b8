import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { type AddressParams, readWorksheet } from "#core/dating/read-worksheet";
import { BackToWorksheet } from "#ui/decoding/back-to-worksheet";
import { DecoderList } from "#ui/decoding/decoder-list";
import plain from "../../../_ui/plain.module.css";
import styles from "./decoders.module.css";

type Props = { readonly searchParams: Promise<AddressParams> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("decoders");
  return { title: t("title") };
}

export default async function DecodersPage({ searchParams }: Props) {
  const [params, t] = await Promise.all([searchParams, getTranslations("decoders")]);
  const { worksheet } = readWorksheet(params);
  return (
    <>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p className={plain.lede}>{t("lede")}</p>
        <p className={plain.note}>
          <BackToWorksheet worksheet={worksheet} />
        </p>
      </header>
      <DecoderList worksheet={worksheet} />
    </>
  );
}
