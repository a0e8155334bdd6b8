import type messages from "../../messages/en.json";

/** Makes every message key checked by the compiler. */
declare module "next-intl" {
  interface AppConfig {
    Messages: typeof messages;
    Locale: "en-GB";
  }
}
