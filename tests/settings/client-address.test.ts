import { expect, it } from "vitest";
import { clientOf } from "#web/client-pace";

it.each([
  ["198.51.100.7", "198.51.100.7"],
  ["::ffff:198.51.100.7", "198.51.100.7"],
  ["203.0.113.5, 198.51.100.7", "198.51.100.7"],
  ["2001:db8:1:2:3:4:5:6", "2001:db8:1:2"],
  ["2001:db8:1:2::9", "2001:db8:1:2"],
  ["2001:db8::9", "2001:db8:0:0"],
  ["", ""],
])("counts the client %s as %s", (header, client) => {
  expect(clientOf(new Request("http://127.0.0.1/", { headers: { "x-forwarded-for": header } }))).toBe(client);
});
