import Link from "next/link";
import { useTranslations } from "next-intl";
import { Said } from "../said.tsx";

type SaidOfFileProps = { readonly file: string; readonly said: string | string[] };

/** What was just done to a file; with what was removed, the way to have it back. */
export function SaidOfFile({ file, said }: SaidOfFileProps) {
  const t = useTranslations("objectPages");
  if (said === "restored") return <Said>{t("restored")}</Said>;
  if (said !== "removed") return <Said>{t("saved")}</Said>;
  return (
    <Said>
      {t.rich("removed", {
        history: (words) => <Link href={`/objects/${file}/history#versions`}>{words}</Link>,
      })}
    </Said>
  );
}
