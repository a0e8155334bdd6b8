"use client";

import { useFormatter, useTranslations } from "next-intl";
import { useEffect, useRef, useState } from "react";
import plain from "../plain.module.css";
import styles from "./contribute.module.css";
import { forget, type Kept, keep, kept } from "./kept-here.ts";

/** What was typed is saved once it has rested this long, and tried again after a failure. */
const REST_MS = 1500;
const AGAIN_MS = 10_000;

type State =
  | { readonly now: "still" | "saving" | "unsaved" | "failed" | "signed out" | "newer" }
  | { readonly now: "saved"; readonly at: Date };

type KeepDraftProps = {
  readonly draft: string;
  /** The id of the form. */
  readonly form: string;
  readonly savedAt: string;
  /** Everything that this browser kept is in the draft now, or was chosen against. */
  readonly settled: boolean;
};

/** Saves the draft while it is written, and says so; what can't be saved is kept in this browser. */
export function KeepDraft({ draft, form: formId, savedAt, settled }: KeepDraftProps) {
  const t = useTranslations("draftIsland");
  const format = useFormatter();
  const [state, setState] = useState<State>({ now: "still" });
  const [recovered, setRecovered] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);

  // Once for each draft: it listens to the form, which outlives every rendering.
  useEffect(() => {
    const form = document.getElementById(formId);
    if (!(form instanceof HTMLFormElement)) return;
    let running = false;
    let again = false;
    // Once another window was quicker, only a person can put both together.
    let overtaken = false;
    let waiting: HTMLElement | null = null;
    // The version that the fields are of. A page that is fetched anew, for a photograph that was added, can bring one
    // that is older than what was saved since, or newer than what stands in the fields.
    let held = versionIn(form);
    const later = (ms: number) => {
      clearTimeout(timer.current);
      timer.current = setTimeout(save, ms);
    };
    async function save() {
      if (!(form instanceof HTMLFormElement)) return;
      if (running) {
        again = true;
        return;
      }
      running = true;
      setState({ now: "saving" });
      setVersion(form, held);
      const { state: outcome, version } = await send(draft, form);
      running = false;
      if (version) {
        held = version;
        setVersion(form, held);
      }
      overtaken = outcome.now === "newer";
      setState(outcome);
      if (waiting) return form.requestSubmit(waiting);
      if (outcome.now === "failed") later(AGAIN_MS);
      else if (again) later(REST_MS);
      again = false;
    }
    const typed = () => {
      if (overtaken) return;
      setState({ now: "unsaved" });
      later(REST_MS);
    };
    // A form that is sent while it is being saved would be of an older version: it waits.
    const leaving = (event: SubmitEvent) => {
      clearTimeout(timer.current);
      setVersion(form, held);
      waiting = running ? event.submitter : null;
      if (running) event.preventDefault();
    };
    if (settled) forget(draft);
    const lost = kept(draft);
    if (lost && saysTheSame(form, lost)) forget(draft);
    else if (lost) {
      fill(form, lost);
      held = versionIn(form);
      setRecovered(true);
      later(0);
    }
    form.addEventListener("input", typed);
    form.addEventListener("submit", leaving);
    return () => {
      clearTimeout(timer.current);
      form.removeEventListener("input", typed);
      form.removeEventListener("submit", leaving);
    };
  }, [draft, formId, settled]);

  const at = state.now === "saved" ? state.at : new Date(savedAt);
  const time = format.dateTime(at, { timeStyle: "short" });
  return (
    <div className={styles.kept}>
      <p role="status" data-kept={state.now}>
        {state.now === "saving" && t("saving")}
        {state.now === "unsaved" && t("unsaved")}
        {(state.now === "still" || state.now === "saved") && t("saved", { time })}
        {state.now === "failed" && t("failed")}
        {state.now === "newer" && t("newer")}
        {state.now === "signed out" && (
          <>
            {t("signedOut")} <a href={`/sign-in?next=/contribute/${draft}`}>{t("signIn")}</a>
          </>
        )}
      </p>
      {recovered && <p>{t("recovered")}</p>}
      {state.now === "newer" && (
        <button type="submit" form={formId} name="act" value="save" className={plain.quiet}>
          {t("compare")}
        </button>
      )}
    </div>
  );
}

/** A version of the draft, and what it says: a form that is sent carries both. */
type Version = { readonly version: string; readonly base: string };

const versionIn = (form: HTMLFormElement): Version => {
  const { version = "", base = "" } = textsOf(form);
  return { version, base };
};

function setVersion(form: HTMLFormElement, { version, base }: Version): void {
  for (const [name, value] of Object.entries({ version, base })) {
    const field = form.elements.namedItem(name);
    if (field instanceof HTMLInputElement) field.value = value;
  }
}

/** Sends the form's texts, without the files. @returns what came of it, with the version that was saved */
async function send(
  draft: string,
  form: HTMLFormElement,
): Promise<{ readonly state: State; readonly version?: Version }> {
  const texts = textsOf(form);
  const body = new FormData();
  for (const [name, text] of Object.entries(texts)) body.set(name, text);
  body.set("act", "save");
  keep(draft, texts);
  try {
    const headers = { accept: "application/json" };
    const answer = await fetch(form.action, { method: "POST", body, headers });
    if (answer.status === 401) return { state: { now: "signed out" } };
    if (answer.status === 409) return { state: { now: "newer" } };
    if (!answer.ok) return { state: { now: "failed" } };
    const saved = (await answer.json()) as {
      readonly version: number;
      readonly savedAt: string;
      readonly typed: Readonly<Record<string, string>>;
    };
    forget(draft);
    return {
      state: { now: "saved", at: new Date(saved.savedAt) },
      version: { version: String(saved.version), base: JSON.stringify(saved.typed) },
    };
  } catch {
    return { state: { now: "failed" } };
  }
}

function textsOf(form: HTMLFormElement): Kept {
  const texts = [...new FormData(form).entries()].flatMap(([name, value]) =>
    typeof value === "string" ? [[name, value] as const] : [],
  );
  return Object.fromEntries(texts);
}

/** Does the form say what was kept, whichever version it is of? */
function saysTheSame(form: HTMLFormElement, texts: Kept): boolean {
  const now = textsOf(form);
  return Object.entries(texts).every(
    ([name, text]) => ["version", "base", "act"].includes(name) || (now[name] ?? "") === text,
  );
}

/** Puts texts back into the fields; with them the version they were made from, so that nothing newer is lost. */
function fill(form: HTMLFormElement, texts: Kept): void {
  for (const [name, text] of Object.entries(texts)) {
    const field = form.elements.namedItem(name);
    if (
      field instanceof HTMLInputElement ||
      field instanceof HTMLTextAreaElement ||
      field instanceof HTMLSelectElement
    )
      if (field.type !== "file") field.value = text;
  }
}
