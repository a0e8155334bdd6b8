import { useTranslations } from "next-intl";
import type { Challenge } from "#core/review/entry-history";
import entry from "../entry/entry.module.css";
import { fullImage, imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import styles from "./challenge.module.css";
import { Who } from "./happened.tsx";
import { When } from "./when.tsx";

/** What is claimed, by whom, and the evidence for it. */
export function ChallengeSaid({
  challenge,
  number,
}: {
  readonly challenge: Challenge;
  readonly number: number;
}) {
  const t = useTranslations("challenge");
  const { by, at, evidence } = challenge;
  return (
    <section aria-labelledby="claimed">
      <h2 id="claimed">{t("claimed")}</h2>
      <p className={plain.note}>
        {t.rich("claimedBy", { number, who: () => <Who by={by} />, when: () => <When at={at} /> })}
      </p>
      <p className={styles.quote}>{evidence.text}</p>
      {evidence.citations.length > 0 && (
        <ul className={entry.sources}>
          {evidence.citations.map(({ author, title, year, place, address, seen }) => (
            <li key={`${author} ${title} ${place}`}>
              {[author, title, year, place].filter((each) => each !== "").join(", ")}
              {address !== "" && (
                <>
                  {" "}
                  <a href={address} rel="nofollow noopener">
                    {address}
                  </a>{" "}
                  {t("seen", { day: seen })}
                </>
              )}
            </li>
          ))}
        </ul>
      )}
      <ul className={styles.evidence}>
        {evidence.photographs.map(({ sha256, credit, licence }) => (
          <li key={sha256}>
            <a href={fullImage({ sha256, width: 0 })}>
              <img
                src={imageAtLeast({ sha256, width: 0 }, 640)}
                alt={t("evidencePhotograph")}
                loading="lazy"
              />
            </a>
            <p className={plain.note}>{t("creditLine", { credit, licence })}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
