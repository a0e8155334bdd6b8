import { NextIntlClientProvider } from "next-intl";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { estimate } from "#core/dating/estimate";
import type { Evidence } from "#core/dating/evidence";
import { DateChart } from "../../app/_ui/dating/date-chart.tsx";
import messages from "../../messages/en.json" with { type: "json" };
import { piece } from "../core/dating/evidence.ts";

const LABELS = { line: "Line 1042", gift: "Gift of 1921 or 1922", code: "Postal code", fix: "Repair label" };

function drawn(evidence: readonly Evidence[]): string {
  const found = estimate(evidence, { kind: "widest", thisYear: 2026 });
  const chart = createElement(DateChart, { estimate: found, evidence, labels: LABELS });
  const provided = { locale: "en-GB" as const, messages, timeZone: "UTC", children: chart };
  return renderToStaticMarkup(createElement(NextIntlClientProvider, provided));
}

/** What is left for somebody who sees no drawing, in the order in which it is read. */
function read(html: string): string {
  return html
    .replace(/<svg[^>]*aria-hidden="true".*?<\/svg>/gs, "")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");
}

const line = piece("line", ["catalogue-line", "made"], "1914/1927", 0.95);
const gift = piece("gift", ["story", "given"], "1921-03-27/1922-08", 0.8);

describe("the chart of an estimate", () => {
  const html = drawn([line, gift, piece("fix", ["repair", "repaired"], "1938", 0.9)]);

  it("says in words all that it draws", () => {
    const words = read(html);
    expect(words).not.toContain("svg");
    expect(words).toMatch(/Made 1913 to 1922 95 in 100 .* 80 in 100 1919 to 1921 50 in 100/);
    expect(words).toContain("not before 1914 not after August 1922");
    expect(words).toMatch(/Gift of 1921 or 1922 .*27 March 1921 to August 1922 .*Line 1042/);
    expect(words).toContain("A repair says nothing about the making");
  });

  it("gives the distribution as a table that sums to a hundred", () => {
    const table = html.slice(html.indexOf("<details"));
    const shares = [...table.matchAll(/<td>([\d.]+)<\/td>/g)].map(([, share]) => Number(share));
    expect(shares.length).toBeGreaterThan(5);
    const sum = shares.reduce((all, share) => all + share, 0);
    expect(sum).toBeGreaterThan(98.5);
    expect(sum).toBeLessThan(100.6);
  });

  it("names what contradicts what at each piece, and gives no bounds but those that nothing disputes", () => {
    const words = read(drawn([line, gift, piece("code", ["address", "labelled"], "1963/..", 0.95)]));
    expect(words).toContain("Contradicts Gift of 1921 or 1922 and Line 1042");
    expect(words).toContain("Pieces contradict each other: what nothing contradicts no bound");
  });
});
