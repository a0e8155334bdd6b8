import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { MakerHead } from "#ui/maker/maker-head";
import { MakerMarks } from "#ui/maker/maker-marks";
import { MakerNeighbours } from "#ui/maker/maker-neighbours";
import { MakerTime } from "#ui/maker/maker-time";
import { showMaker } from "#web/reading";
import styles from "./maker-page.module.css";

type Props = { readonly params: Promise<{ readonly slug: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const maker = await showMaker((await params).slug);
  return maker ? { title: maker.summary.name } : {};
}

export default async function MakerPage({ params }: Props) {
  const view = await showMaker((await params).slug);
  if (!view) notFound();
  return (
    <article className={styles.maker}>
      <MakerHead view={view} />
      <MakerTime view={view} />
      <MakerNeighbours view={view} />
      <MakerMarks view={view} />
    </article>
  );
}
