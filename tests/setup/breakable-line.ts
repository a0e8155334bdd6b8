import { type AddressInfo, connect, createServer, type Socket } from "node:net";

/** A line to a host that can break off in the middle of what is sent over it. */
export type BreakableLine = {
  readonly address: string;
  /** Breaks every connection once so many more bytes were sent, and lets no new one through until it is mended. */
  breakAfter(bytes: number): void;
  mend(): void;
  /** Has it broken since it was told to? */
  isBroken(): boolean;
  end(): Promise<void>;
};

/** Opens a line on a port of its own that passes everything on, byte by byte. @param target `http://host:port` */
export async function openBreakableLine(target: string): Promise<BreakableLine> {
  const { hostname, port } = new URL(target);
  const open = new Set<Socket>();
  let left = Number.POSITIVE_INFINITY;
  const drop = () => {
    for (const socket of open) socket.resetAndDestroy();
  };
  const server = createServer((near) => {
    if (left <= 0) return near.resetAndDestroy();
    const far = connect(Number(port), hostname);
    for (const socket of [near, far]) {
      open.add(socket);
      socket.on("error", () => socket.destroy());
      socket.on("close", () => {
        open.delete(socket);
        near.destroy();
        far.destroy();
      });
    }
    near.on("data", (chunk) => {
      left -= chunk.length;
      if (left <= 0) drop();
      else far.write(chunk);
    });
    far.pipe(near);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    breakAfter(bytes) {
      left = bytes;
    },
    mend() {
      left = Number.POSITIVE_INFINITY;
    },
    isBroken: () => left <= 0,
    end() {
      drop();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}
