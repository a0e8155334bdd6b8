import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { type AddressParams, readAddress, readWorksheet } from "#core/dating/read-worksheet";
import { worksheetQuery } from "#core/dating/worksheet";
import { TakeWorksheet } from "#ui/objects/take-worksheet";
import { actorWhoMay } from "#web/actor";
import { keepTypedForm, keptForm, newItemId, objectFilesOf } from "#web/object-files/reading";

type Props = { readonly searchParams: Promise<AddressParams> };

/** Longer addresses do not fit into that of the page for signing in. */
const LONGEST_ADDRESS = 900;

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("take.title"), robots: { index: false } };
}

/** Takes a worksheet into an object file: one of those that the member may change, or a new one. */
export default async function TakePage({ searchParams }: Props) {
  const params = await searchParams;
  const name = typeof params.form === "string" ? params.form : undefined;
  const form = keptForm(name);
  const kept = form?.typed.worksheet;
  const { worksheet, errors } = kept === undefined ? readWorksheet(params) : readAddress(kept);
  const query = worksheetQuery(worksheet);
  const member = await actorWhoMay("keep an object file", () => {
    const address = `/objects/take?${query}`;
    if (form) return `/objects/take?form=${name}`;
    const isLong = encodeURIComponent(address).length > LONGEST_ADDRESS;
    return isLong ? `/objects/take?form=${keepTypedForm({ worksheet: query })}` : address;
  });
  const files = (await objectFilesOf(member.id)).filter(({ access }) => access !== "view");
  return (
    <TakeWorksheet
      worksheet={worksheet}
      unreadable={errors}
      files={files}
      form={{ typed: form?.typed ?? {}, errors: form?.errors ?? [] }}
      ids={worksheet.pieces.map(newItemId)}
    />
  );
}
