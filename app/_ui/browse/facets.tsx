import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { EntryPage, Facet } from "#core/entries/query";
import { type Asked, addressOf } from "./asked.tsx";
import styles from "./browse.module.css";

type FacetsProps = { readonly facets: EntryPage["facets"]; readonly asked: Asked };
type Name = "kind" | "technique" | "material" | "maker";
/** How many values are shown at once; the rest unfold. */
const SHOWN = 8;

/** What the entries found are, and how many each choice would leave. */
export function Facets({ facets, asked }: FacetsProps) {
  const t = useTranslations();
  const lists: readonly { name: Name; values: readonly (Facet & { label: string })[] }[] = [
    {
      name: "kind",
      values: facets.kinds.map((each) => ({ ...each, label: t(`kinds.${each.value}` as "kinds.mark") })),
    },
    {
      name: "technique",
      values: facets.techniques.map((each) => ({
        ...each,
        label: t(`techniques.${each.value}` as "techniques.cast"),
      })),
    },
    { name: "material", values: facets.materials.map((each) => ({ ...each, label: each.value })) },
    { name: "maker", values: facets.makers },
  ];
  const open = lists.some(({ name }) => asked[name] !== "");
  return (
    <details className={styles.facets} open={open}>
      <summary>{t("browse.narrow")}</summary>
      <nav aria-label={t("browse.narrow")}>
        {lists.map(
          ({ name, values }) =>
            values.length > 0 && <FacetList key={name} name={name} values={values} asked={asked} />,
        )}
      </nav>
    </details>
  );
}

function FacetList({
  name,
  values,
  asked,
}: {
  name: Name;
  values: readonly (Facet & { label: string })[];
  asked: Asked;
}) {
  const t = useTranslations("browse");
  const chosen = values.filter(({ value }) => value === asked[name]);
  const others = asked[name] === "" ? values : [];
  return (
    <section>
      <h3>{t(`facets.${name}`)}</h3>
      <ul>
        {chosen.map((each) => (
          <li key={each.value}>
            <Link href={addressOf(asked, { [name]: "" })} className={styles.chosen}>
              <b>{each.label}</b> <span>{t("remove")}</span>
            </Link>
          </li>
        ))}
        {others.slice(0, SHOWN).map((each) => (
          <Choice key={each.value} href={addressOf(asked, { [name]: each.value })} {...each} />
        ))}
      </ul>
      {others.length > SHOWN && (
        <details>
          <summary>{t("others", { count: others.length - SHOWN })}</summary>
          <ul>
            {others.slice(SHOWN).map((each) => (
              <Choice key={each.value} href={addressOf(asked, { [name]: each.value })} {...each} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Choice({ href, label, count }: { href: string; label: string; count: number }) {
  const format = useFormatter();
  return (
    <li>
      <Link href={href} prefetch={false}>
        <b>{label}</b> <span>{format.number(count)}</span>
      </Link>
    </li>
  );
}
