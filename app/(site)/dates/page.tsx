import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { NextIntlClientProvider } from "next-intl";
import { getMessages, getTranslations } from "next-intl/server";
import { answerWorksheetForm } from "#core/dating/answer-worksheet-form";
import { type AddressParams, readWorksheet } from "#core/dating/read-worksheet";
import { WorksheetBench } from "#ui/worksheet/worksheet-bench";

type Props = { readonly searchParams: Promise<AddressParams> };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const t = await getTranslations("worksheet");
  const { worksheet } = readWorksheet(await searchParams);
  // What somebody put down about an object is theirs to show: no search engine keeps it.
  const robots = worksheet.pieces.length > 0 ? { robots: { index: false } } : {};
  return { title: worksheet.title || t("title"), ...robots };
}

/** A worksheet that anyone can use: all of it is in the address, nothing is kept. */
export default async function DatesPage({ searchParams }: Props) {
  const answer = answerWorksheetForm(await searchParams);
  if ("go" in answer) redirect(answer.go);
  const { worksheet, dating, period, rules, fields, questionForm, address } = await getMessages();
  const { optional, didYouMean } = questionForm;
  const messages = {
    worksheet,
    dating,
    period,
    rules,
    fields,
    address,
    questionForm: { optional, didYouMean },
  };
  return (
    <NextIntlClientProvider messages={messages}>
      <WorksheetBench
        key={JSON.stringify(answer.state)}
        initial={answer.state}
        thisYear={new Date().getUTCFullYear()}
      />
    </NextIntlClientProvider>
  );
}
