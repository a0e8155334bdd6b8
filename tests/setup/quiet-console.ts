import { afterEach, beforeEach, expect, type MockInstance, vi } from "vitest";

/**
 * An error written to the console that no test expects fails the test during which it was written.
 * A test that expects one says so: `vi.mocked(console.error).mockImplementation(() => undefined)`, then asserts
 * on the calls and ends with `vi.mocked(console.error).mockClear()`.
 */
let written: MockInstance<typeof console.error>;

beforeEach(() => {
  written = vi.spyOn(console, "error");
});

afterEach(() => {
  const calls = [...written.mock.calls];
  written.mockRestore();
  expect(calls, "console.error was called").toEqual([]);
});
