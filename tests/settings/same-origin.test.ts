import { describe, expect, it } from "vitest";
import { isSameOrigin } from "#web/write";

const post = (headers: Record<string, string>) =>
  new Request("http://reference.example/api/look-ups", {
    method: "POST",
    headers: { host: "reference.example", ...headers },
  });

describe("a write", () => {
  it.each([
    [{ "sec-fetch-site": "same-origin" }, true],
    [{ "sec-fetch-site": "none" }, true],
    [{ "sec-fetch-site": "cross-site" }, false],
    [{ "sec-fetch-site": "same-site" }, false],
    [{ origin: "http://reference.example" }, true],
    [{ origin: "http://elsewhere.example" }, false],
    [{ origin: "null" }, false],
    [{}, true],
  ])("with %j is taken: %s", (headers, taken) => {
    expect(isSameOrigin(post(headers as Record<string, string>))).toBe(taken);
  });
});
