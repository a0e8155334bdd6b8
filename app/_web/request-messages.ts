import { getRequestConfig } from "next-intl/server";
import en from "../../messages/en.json";

/** The interface's words for a request. English first; other languages join here. */
export default getRequestConfig(async () => ({ locale: "en-GB", messages: en, timeZone: "UTC" }));
