import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Worksheet } from "#core/dating/worksheet";
import { DECODERS } from "#core/decoding/decoders";
import { addressOfDecoder, carriedTo } from "./asked.ts";
import styles from "./decoder-list.module.css";

/** Everything that can be read on an object and is in a table, as the trade calls it. */
export function DecoderList({ worksheet }: { readonly worksheet: Worksheet }) {
  const t = useTranslations("decoders");
  return (
    <ul className={styles.list}>
      {DECODERS.map((name) => (
        <li key={name}>
          <h2>
            <Link href={carriedTo(addressOfDecoder(name), worksheet)}>{t(`names.${name}`)}</Link>
          </h2>
          <p>{t(`about.${name}`)}</p>
          <p className={styles.example}>{t(`examples.${name}`)}</p>
        </li>
      ))}
    </ul>
  );
}
