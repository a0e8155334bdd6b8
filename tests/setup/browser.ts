import { type Browser, chromium, type Page } from "playwright-core";

/** A page of its own, with nothing remembered, in a browser that ends with the test file. */
export type OpenedBrowser = {
  newPage(options?: Parameters<Browser["newContext"]>[0]): Promise<Page>;
  /** Lets a kind of error go that a test brings about on purpose, such as a refused request. */
  forgive(kind: RegExp): void;
  close(): Promise<void>;
};

/**
 * Opens the Chromium that CHROMIUM_PATH names. An error that a page writes to its console, or throws, is kept, and
 * closing the browser reports it.
 */
export async function openBrowser(): Promise<OpenedBrowser> {
  const executablePath = process.env.CHROMIUM_PATH ?? "/usr/bin/chromium";
  // Chromium refuses its own sandbox to root, as which tests run in a container.
  const args = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  const browser = await chromium.launch({ executablePath, args });
  const complaints: string[] = [];
  return {
    async newPage(options = {}) {
      const page = await (await browser.newContext(options)).newPage();
      page.on("pageerror", (error) => complaints.push(`${page.url()}: ${error.message}`));
      page.on("console", (message) => {
        if (message.type() === "error")
          complaints.push(`${page.url()}: ${message.text()} ${message.location().url}`);
      });
      return page;
    },
    forgive(kind) {
      for (const told of complaints.filter((each) => kind.test(each)))
        complaints.splice(complaints.indexOf(told), 1);
    },
    async close() {
      await browser.close();
      if (complaints.length > 0)
        throw new Error(`Pages wrote errors to their console:\n${complaints.join("\n")}`);
    },
  };
}
