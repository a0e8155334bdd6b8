import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { type AddressParams, readWorksheet } from "#core/dating/read-worksheet";
import { type DecoderInput, decode, isDecoder } from "#core/decoding/decoders";
import { Answer } from "#ui/decoding/answer";
import { BackToWorksheet } from "#ui/decoding/back-to-worksheet";
import { DecoderFields } from "#ui/decoding/decoder-fields";
import { DecoderForm } from "#ui/decoding/decoder-form";
import { DiamondHelp } from "#ui/decoding/diamond-help";
import { carriedTo, isAsked } from "../../../../_ui/decoding/asked.ts";
import plain from "../../../../_ui/plain.module.css";
import styles from "./decoder-page.module.css";

type Props = {
  readonly params: Promise<{ readonly name: string }>;
  readonly searchParams: Promise<AddressParams>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [{ name }, t] = await Promise.all([params, getTranslations("decoders")]);
  return isDecoder(name) ? { title: t(`names.${name}`) } : {};
}

export default async function DecoderPage({ params, searchParams }: Props) {
  const [{ name }, query, t] = await Promise.all([params, searchParams, getTranslations("decoders")]);
  if (!isDecoder(name)) notFound();
  const input: DecoderInput = query;
  const { worksheet } = readWorksheet(query);
  const decoded = isAsked(name, input) ? decode(name, input) : null;
  const error = decoded && !decoded.ok ? decoded.error : null;
  return (
    <>
      <header className={styles.head}>
        <p className={`${plain.note} ${styles.ways}`}>
          <Link href={carriedTo("/dates/decoders", worksheet)}>{t("title")}</Link>
          <BackToWorksheet worksheet={worksheet} />
        </p>
        <h1>{t(`names.${name}`)}</h1>
        <p className={plain.lede}>{t(`about.${name}`)}</p>
      </header>
      <div className={styles.sides}>
        <div className={styles.asked}>
          <DecoderForm name={name} input={input} error={error} worksheet={worksheet}>
            <DecoderFields name={name} input={input} error={error} />
          </DecoderForm>
          {name === "registration-diamond" && <DiamondHelp />}
        </div>
        {decoded?.ok && (
          <section id="answer" tabIndex={-1} className={styles.answer} aria-label={t("answer")}>
            <Answer decoded={decoded.value} worksheet={worksheet} />
          </section>
        )}
      </div>
    </>
  );
}
