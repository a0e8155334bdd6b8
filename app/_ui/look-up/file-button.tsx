import { type ChangeEvent, useId } from "react";
import plain from "../plain.module.css";
import { ACCEPT } from "./check-file.ts";
import styles from "./file-button.module.css";

type FileButtonProps = {
  readonly words: string;
  readonly onFiles: (files: readonly File[]) => void;
  /** Opens the camera instead of the photographs that are there; shown where a finger is the pointer. */
  readonly camera?: boolean;
};

/** A file field that looks like a button. */
export function FileButton({ words, onFiles, camera = false }: FileButtonProps) {
  const id = useId();

  function changed(event: ChangeEvent<HTMLInputElement>) {
    const files = [...(event.target.files ?? [])];
    if (files.length > 0) onFiles(files);
    // The same file can be chosen again after it was refused.
    event.target.value = "";
  }

  return (
    <span className={camera ? `${styles.file} ${styles.camera}` : styles.file}>
      <input
        id={id}
        type="file"
        accept={ACCEPT}
        {...(camera ? { capture: "environment" } : { multiple: true })}
        onChange={changed}
      />
      <label htmlFor={id} className={plain.quiet}>
        {words}
      </label>
    </span>
  );
}
